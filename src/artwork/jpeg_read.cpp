// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/jpeg_read.h"

#include "artwork/colour.h"
#include "artwork/damage.h"
#include "artwork/done.h"
#include "artwork/exif.h"
#include "artwork/jpeg_decoder.h"
#include "base/words.h"

namespace qw::artwork {

namespace {

using Coded = JpegHead::Coded;
using Output = JpegDecoder::Output;

// A block of 64 pixels takes at least one bit; a file whose largest component is halved one way is let pass too.
constexpr std::uint64_t most_pixels_per_byte = 1024;

void check_size(const JpegHead& head, const Limits& limits, std::uint64_t file_bytes) {
    const std::uint64_t pixels = std::uint64_t{head.width} * head.height;
    const std::string said = "its header says " + std::to_string(head.width) + " x " + std::to_string(head.height) + " pixels";
    if (pixels > limits.pixels) damaged(said + ", more than the " + std::to_string(limits.pixels) + " that artwork may have");
    if (pixels / most_pixels_per_byte > file_bytes)
        damaged(said + ", more than a file of " + std::to_string(file_bytes) + " bytes can hold");
}

/// Readers of PDF go by the Adobe marker and else take three components for YCbCr (ISO 32000-1, table 13); libjpeg
/// also goes by JFIF and by the components' names. Only where both agree is the file safe to pass on.
bool marked_alike(const JpegHead& head) {
    if (head.coded == Coded::ycc) return head.adobe_transform.value_or(1) == 1;
    if (head.coded == Coded::rgb) return head.adobe_transform == 0;
    return true;
}

Model model_of(const JpegHead& head) {
    return head.coded == Coded::grey ? Model::grey : head.coded == Coded::cmyk ? Model::cmyk : Model::rgb;
}

std::optional<Density> density_of(const JpegHead& head, const Exif& exif) {
    if (head.ppi_x > 0 && head.ppi_y > 0) return Density{head.ppi_x, head.ppi_y};
    return exif.density;
}

class JpegFile {
public:
    JpegFile(Reader& reader, Facts& facts) : decoder_(reader), facts_(facts) {}
    void read_head(const Limits& limits, std::uint64_t file_bytes);
    void read_rows(Purpose purpose, Rows& rows);

private:
    void read_profile();
    void tell_passage();
    Output output_for(Purpose purpose) const;

    JpegDecoder decoder_;
    Facts& facts_;
    JpegHead head_;
    std::optional<Profile> convert_;
};

void JpegFile::read_head(const Limits& limits, std::uint64_t file_bytes) {
    head_ = decoder_.read_head();
    check_size(head_, limits, file_bytes);
    if (head_.coded == Coded::other) damaged("it has " + std::to_string(head_.components) + " components of an unknown kind");
    const Exif exif = read_exif(decoder_.exif());
    facts_.kind = Kind::jpeg;
    facts_.width = head_.width;
    facts_.height = head_.height;
    facts_.turn = exif.turn;
    facts_.colour = head_.coded == Coded::grey ? Colour::grey : head_.coded == Coded::cmyk ? Colour::cmyk : Colour::rgb;
    facts_.bits = 8;
    facts_.jpeg_quality = head_.quality;
    facts_.density = density_of(head_, exif);
    read_profile();
    tell_passage();
}

void JpegFile::read_profile() {
    const std::vector<std::byte> icc = decoder_.icc();
    facts_.profile = !icc.empty();
    if (facts_.profile) {
        convert_ = Profile::read(icc, model_of(head_));
        facts_.profile_is_srgb = convert_->is_srgb();
    }
    if (facts_.profile_is_srgb) convert_.reset();
    if (convert_) tell_conversion(*convert_, facts_);
    if (head_.coded == Coded::cmyk && !convert_) damaged("CMYK without a profile cannot be converted");
}

void JpegFile::tell_passage() {
    std::vector<std::string> reasons;
    if (head_.coded == Coded::cmyk) reasons.push_back("it is CMYK");
    else if (convert_) reasons.push_back("its colours are not sRGB");
    if (!marked_alike(head_)) reasons.push_back("its colours are marked in a way that not all programs read alike");
    if (head_.arithmetic) reasons.push_back("it is packed by arithmetic coding, which PDF does not have");
    facts_.passage = reasons.empty() ? Passage::through : Passage::recoded;
    facts_.why_recoded = listed(reasons, "and");
}

Output JpegFile::output_for(Purpose purpose) const {
    if (head_.coded == Coded::cmyk) return Output::cmyk;
    if (head_.coded == Coded::grey) return Output::luma;
    return purpose == Purpose::measuring && head_.coded == Coded::ycc && !convert_ ? Output::luma : Output::rgb;
}

void JpegFile::read_rows(Purpose purpose, Rows& rows) {
    const Output output = output_for(purpose);
    decoder_.start(output);
    const int stored = output == Output::luma ? 1 : output == Output::rgb ? 3 : 4;
    const Form form{head_.width, head_.height, stored == 1 ? 1 : 3, facts_.turn, {}};
    std::optional<Conversion> conversion;
    Scratch converted(std::size_t{head_.width} * 3 + row_slack);
    // Adobe's files hold CMYK with 0 for full ink.
    if (convert_) conversion.emplace(*convert_, SampleLayout{stored, false, 1, stored == 4 && head_.adobe_transform.has_value()});
    rows.begin(form);
    for (auto batch = decoder_.next(); batch.rows > 0; batch = decoder_.next()) {
        for (std::uint32_t i = 0; i < batch.rows; ++i) {
            const std::uint8_t* row = batch.samples + std::size_t{i} * head_.width * static_cast<unsigned>(stored);
            if (conversion) {
                conversion->apply(row, converted.data(), head_.width);
                row = converted.data();
            }
            rows.row(row);
        }
    }
    decoder_.finish();
}

}  // namespace

void read_jpeg(Reader& reader, const Limits& limits, Purpose purpose, Facts& facts, Rows& rows) {
    JpegFile file(reader, facts);
    file.read_head(limits, reader.size());
    file.read_rows(purpose, rows);
}

}  // namespace qw::artwork
