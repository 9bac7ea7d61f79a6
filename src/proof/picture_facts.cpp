// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/picture_facts.h"

#include "proof/hash_pipe.h"

#include <utility>

namespace qw::proof {

namespace {

/// ISO 32000-1 tables 93 and 94.
std::string full_name(const std::string& name) {
    static const std::map<std::string, std::string> abbreviations{
        {"AHx", "ASCIIHexDecode"}, {"A85", "ASCII85Decode"}, {"LZW", "LZWDecode"},     {"Fl", "FlateDecode"},
        {"RL", "RunLengthDecode"}, {"CCF", "CCITTFaxDecode"}, {"DCT", "DCTDecode"},    {"G", "DeviceGray"},
        {"RGB", "DeviceRGB"},      {"CMYK", "DeviceCMYK"},    {"I", "Indexed"}};
    const auto found = abbreviations.find(name);
    return found == abbreviations.end() ? name : found->second;
}

std::string filters_of(Object filters) {
    std::string joined;
    for (const auto& filter : elements(filters)) joined += (joined.empty() ? "" : "+") + full_name(name_of(filter));
    return joined;
}

/// The name of a colour space's family: a name by itself or the first element of an array.
std::string family_of(Object space) {
    const auto parts = elements(space);
    return parts.empty() ? "" : full_name(name_of(parts.front()));
}

PlacedPicture described(Object dictionary) {
    PlacedPicture picture;
    picture.filter = filters_of(entry(dictionary, "/Filter"));
    picture.width = count_of(entry(dictionary, "/Width"));
    picture.height = count_of(entry(dictionary, "/Height"));
    const bool stencil = is_true(entry(dictionary, "/ImageMask"));
    picture.bits = stencil ? 1 : static_cast<int>(std::min(count_of(entry(dictionary, "/BitsPerComponent")), 64u));
    picture.colour_space = family_of(entry(dictionary, "/ColorSpace"));
    picture.soft_mask = entry(dictionary, "/SMask").isStream() || count_of(entry(dictionary, "/SMaskInData")) > 0;
    return picture;
}

/// Table 93: keys of an inline image's dictionary.
Object with_full_keys(Object dictionary) {
    static constexpr std::pair<const char*, const char*> keys[] = {
        {"/BPC", "/BitsPerComponent"}, {"/CS", "/ColorSpace"}, {"/D", "/Decode"}, {"/DP", "/DecodeParms"},
        {"/F", "/Filter"},             {"/H", "/Height"},      {"/IM", "/ImageMask"}, {"/W", "/Width"},
        {"/L", "/Length"}};
    for (const auto& [brief, full] : keys)
        if (const auto value = entry(dictionary, brief); !is_null(value) && is_null(entry(dictionary, full)))
            dictionary.replaceKey(full, value);
    return dictionary;
}

/// Bytes of samples that are not encoded; 0 when the colour space does not tell.
std::uint64_t plain_bytes(const PlacedPicture& picture) {
    static const std::map<std::string, int> components{
        {"", 1}, {"DeviceGray", 1}, {"CalGray", 1}, {"Indexed", 1}, {"DeviceRGB", 3}, {"CalRGB", 3}, {"DeviceCMYK", 4}};
    const auto found = components.find(picture.colour_space);
    if (!picture.filter.empty() || found == components.end()) return 0;
    const std::uint64_t row = (std::uint64_t{picture.width} * static_cast<unsigned>(found->second * picture.bits) + 7) / 8;
    return row * picture.height;
}

/// The white space in front of EI belongs to the operator, but only the length can tell it from a last byte of data.
void drop_space_before_ei(std::string& data, std::uint64_t length) {
    if (length > 0 && length <= data.size()) return data.resize(static_cast<std::size_t>(length));
    if (data.ends_with("\r\n")) data.pop_back();
    if (!data.empty() && std::string_view(" \t\r\n\f").find(data.back()) != std::string_view::npos) data.pop_back();
}

}  // namespace

const PlacedPicture& PictureBook::of(Object stream) {
    if (const auto found = known_.find(stream.getObjGen()); found != known_.end()) return found->second;
    PlacedPicture picture = described(stream.getDict());
    HashPipe pipe;
    stream.pipeStreamData(&pipe, nullptr, 0, qpdf_dl_none);
    picture.stream_sha256 = pipe.hash.hex();
    return known_.emplace(stream.getObjGen(), std::move(picture)).first->second;
}

PlacedPicture inline_picture(Object dictionary, std::string data, Object resources) {
    dictionary = with_full_keys(dictionary);
    PlacedPicture picture = described(dictionary);
    Object space = entry(dictionary, "/ColorSpace");
    if (space.isName())
        if (const auto named = entry(entry(resources, "/ColorSpace"), space.getName()); !is_null(named))
            picture.colour_space = family_of(named);
    const std::uint64_t told = count_of(entry(dictionary, "/Length"));
    drop_space_before_ei(data, told ? told : plain_bytes(picture));
    picture.stream_sha256 = sha256_of(data);
    return picture;
}

}  // namespace qw::proof
