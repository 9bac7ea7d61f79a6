// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/picture.h"

#include "artwork/damage.h"
#include "artwork/pack_rows.h"
#include "artwork/read.h"
#include "artwork/reader.h"
#include "base/digest.h"
#include "base/fault.h"

#include <algorithm>
#include <cstring>

namespace qw::artwork {

namespace {

[[noreturn]] void changed(const Path& path) {
    throw Fault(FaultKind::not_carried_out, {"file-changed", {path.string(), 0, 0}, "the file changed while it was worked on", "",
                                             "leave the artwork alone during a run and run it again"});
}

/// A file's payload as it lies there. The digest is compared before the last bytes are handed out, so that no
/// reader can end with bytes that were never measured.
class PassedBytes : public ByteStream {
public:
    PassedBytes(std::unique_ptr<Source> source, Path path, const Facts& facts)
        : source_(std::move(source)), path_(std::move(path)), extents_(facts.payload), sha256_(facts.payload_sha256) {
        for (const Extent& extent : extents_) left_ += extent.length;
    }

    std::size_t read(std::span<std::byte> bytes) override {
        if (left_ == 0 || bytes.empty()) return 0;
        std::size_t done = 0;
        while (done < bytes.size() && left_ > 0) done += read_extent(bytes.subspan(done));
        digest_.add(bytes.first(done));
        if (left_ == 0 && digest_.hex() != sha256_) changed(path_);
        return done;
    }

private:
    std::size_t read_extent(std::span<std::byte> bytes) {
        while (in_extent_ == extents_[extent_].length) {
            ++extent_;
            in_extent_ = 0;
        }
        const Extent& extent = extents_[extent_];
        const auto n = static_cast<std::size_t>(std::min<std::uint64_t>(bytes.size(), extent.length - in_extent_));
        const std::size_t got = source_->read(extent.offset + in_extent_, bytes.first(n));
        if (got == 0) changed(path_);
        in_extent_ += got;
        left_ -= got;
        return got;
    }

    std::unique_ptr<Source> source_;
    Path path_;
    Extents extents_;
    std::string sha256_;
    std::size_t extent_ = 0;
    std::uint64_t in_extent_ = 0, left_ = 0;
    Sha256 digest_;
};

class HeldBytes : public ByteStream {
public:
    explicit HeldBytes(std::vector<std::byte> bytes) : bytes_(std::move(bytes)) {}
    std::size_t read(std::span<std::byte> bytes) override {
        const std::size_t n = std::min(bytes.size(), bytes_.size() - at_);
        if (n > 0) std::memcpy(bytes.data(), bytes_.data() + at_, n);
        at_ += n;
        return n;
    }

private:
    std::vector<std::byte> bytes_;
    std::size_t at_ = 0;
};

Picture passed(std::unique_ptr<Source> source, const Path& path, const Facts& facts) {
    Picture picture;
    picture.width = facts.width;
    picture.height = facts.height;
    picture.components = facts.colour == Colour::rgb ? 3 : facts.colour == Colour::cmyk ? 4 : 1;
    picture.bits = facts.bits;
    picture.filter = facts.kind == Kind::jpeg ? Picture::Filter::dct : Picture::Filter::flate_png_rows;
    picture.palette = facts.palette;
    for (const Extent& extent : facts.payload) picture.stream_bytes += extent.length;
    picture.samples = std::make_unique<PassedBytes>(std::move(source), path, facts);
    return picture;
}

/// Decodes the file as `look` did and makes sure that it still is the same file.
void decode(Source& source, const Path& path, const Facts& facts, Rows& rows) {
    Reader reader(source);
    // What it was is also what it may be: a file exchanged for a larger picture takes no memory.
    const Limits limits{facts.bytes, std::uint64_t{facts.width} * facts.height};
    Facts again;
    try {
        read_picture(reader, limits, Purpose::drawing, again, rows);
    } catch (const Damage&) {  // it was not damaged when it was looked at
        changed(path);
    }
    reader.drain();
    if (reader.sha256() != facts.sha256) changed(path);
}

Picture recoded(std::unique_ptr<Source> source, const Path& path, const Facts& facts) {
    PackRows rows;
    decode(*source, path, facts, rows);
    source.reset();
    std::vector<std::byte> packed = rows.packed();
    const Form& form = rows.form();
    Picture picture;
    picture.width = form.width;
    picture.height = form.height;
    picture.components = form.components;
    const auto palette = std::as_bytes(std::span(form.palette)).first(facts.palette.size());
    picture.palette.assign(palette.begin(), palette.end());
    picture.stream_bytes = packed.size();
    picture.samples = std::make_unique<HeldBytes>(std::move(packed));
    return picture;
}

}  // namespace

Picture open_picture(Disk& disk, const Path& path, const Facts& facts) {
    auto source = disk.open(path);
    if (source->size() != facts.bytes) changed(path);
    return facts.passage == Passage::through ? passed(std::move(source), path, facts) : recoded(std::move(source), path, facts);
}

}  // namespace qw::artwork
