// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include "base/digest.h"
#include "base/words.h"
#include "bundle/kinds.h"
#include "bundle/zip_callback.h"

#include <algorithm>
#include <cerrno>
#include <limits>

namespace qw::bundle {

namespace {

constexpr std::size_t unpacked_at_once = std::size_t{1} << 18;

// A file of a few kilobytes can claim to inflate to many gigabytes. Deflate itself reaches 1032:1 on zeros (zlib,
// "Technical Details"); the texts of a bundle come nowhere near 200:1.
constexpr std::uint64_t largest_inflated = std::uint64_t{2} << 30;
constexpr std::uint64_t inflated_for_free = std::uint64_t{64} << 20;
constexpr std::uint64_t most_inflated_per_byte = 200;
constexpr std::size_t most_kept = std::size_t{1} << 20;

/// A zip of any origin, as libzip reads it: without what lies around it, which libzip takes for damage.
class ArchiveInput : public ZipCallback {
public:
    ArchiveInput(Disk& disk, const Path& path, const Structure& structure, std::exception_ptr& failure)
        : ZipCallback(failure), file_(disk.open(path)), begin_(structure.begin), size_(structure.end - structure.begin) {}
    std::uint64_t size() const { return size_; }

private:
    zip_int64_t call(void* data, zip_uint64_t length, zip_source_cmd_t command) override {
        switch (command) {
            case ZIP_SOURCE_SUPPORTS: return ZIP_SOURCE_SUPPORTS_SEEKABLE;
            case ZIP_SOURCE_STAT: return stat(static_cast<zip_stat_t*>(data));
            case ZIP_SOURCE_OPEN: at_ = 0; return 0;
            case ZIP_SOURCE_READ: return read(static_cast<std::byte*>(data), length);
            case ZIP_SOURCE_SEEK: return seek(data, length);
            case ZIP_SOURCE_TELL: return static_cast<zip_int64_t>(at_);
            case ZIP_SOURCE_CLOSE: return 0;
            default: return unsupported();
        }
    }

    zip_int64_t stat(zip_stat_t* st) const {
        zip_stat_init(st);
        st->valid = ZIP_STAT_SIZE;
        st->size = size();
        return sizeof *st;
    }

    zip_int64_t read(std::byte* to, zip_uint64_t length) {
        const std::uint64_t left = at_ < size_ ? size_ - at_ : 0;
        const std::size_t n = file_->read(begin_ + at_, {to, static_cast<std::size_t>(std::min(length, left))});
        at_ += n;
        return static_cast<zip_int64_t>(n);
    }

    zip_int64_t seek(void* data, zip_uint64_t length) {
        ZipError error;
        const zip_int64_t to = zip_source_seek_compute_offset(at_, size(), data, length, error.get());
        if (to < 0) return fail(ZIP_ER_SEEK, EINVAL);
        at_ = static_cast<std::uint64_t>(to);
        return 0;
    }

    std::unique_ptr<Source> file_;
    std::uint64_t begin_, size_, at_ = 0;
};

struct Damage {
    std::string text;
};
/// What would inflate beyond measure.
struct Bomb {
    std::string text;
};

/// One zip being read. What is wrong with the zip is thrown as Damage and becomes a value in read_zip; what is wrong
/// with the disk stays the Fault that it is.
class Unpacking {
public:
    /// Whether headers agree is told by the structure, so libzip need not stop at it.
    Unpacking(Disk& disk, const Path& path, const Structure& structure) : structure_(structure), input_(disk, path, structure, failure_), buffer_(unpacked_at_once) {
        ZipError error;
        zip_source_t* source = input_.source(error.get());
        zip_ = source ? zip_open_from_source(source, ZIP_RDONLY, error.get()) : nullptr;
        if (!zip_ && source) zip_source_free(source);
        if (!zip_) fail("it cannot be read as a zip: " + error.text());
    }
    ~Unpacking() { zip_discard(zip_); }
    Unpacking(const Unpacking&) = delete;
    Unpacking& operator=(const Unpacking&) = delete;

    std::string name(std::uint64_t index) const { return stat(index).name; }
    std::uint64_t count() const { return static_cast<std::uint64_t>(zip_get_num_entries(zip_, 0)); }

    /// libzip reads the same entries as the structure.
    void check_names() const {
        if (count() != structure_.entries.size()) fail("its headers contradict each other");
        for (std::uint64_t i = 0; i < count(); ++i)
            if (name(i) != structure_.entries[i].called()) fail("its headers contradict each other about the name of entry " + std::to_string(i + 1));
    }

    /// What the headers say, before anything is inflated.
    void check_claims() const {
        std::uint64_t packed = 0, inflated = 0;
        for (std::uint64_t i = 0; i < count(); ++i) {
            const zip_stat_t st = stat(i);
            if (!unreadable(i).empty()) continue;
            const std::string name = "'" + std::string(st.name) + "' ";
            // Entries that overlap may claim more than there is; what each of them claims counts.
            if (st.comp_size > input_.size()) throw Damage{name + "lies outside of the file"};
            packed += std::min(st.comp_size, input_.size() - packed);
            if (st.comp_method == ZIP_CM_STORE && st.size != st.comp_size) throw Damage{name + "is stored with two different sizes"};
            inflated += st.size;
            if (inflated > inflated_for_free + most_inflated_per_byte * packed)
                throw Bomb{name + "would make it inflate to more than " + std::to_string(most_inflated_per_byte) + " times its size"};
            if (st.comp_method != ZIP_CM_STORE && st.size > largest_inflated) throw Bomb{name + "would inflate to " + std::to_string(st.size) + " bytes"};
        }
    }

    /// Why an entry cannot be read by us, whole as it may be; "": it can.
    std::string unreadable(std::uint64_t index) const {
        const EntryHeader& entry = structure_.entries[index];
        if (entry.is_encrypted()) return "it is encrypted";
        if (entry.method != ZIP_CM_STORE && entry.method != ZIP_CM_DEFLATE) return "it is packed by method " + std::to_string(entry.method);
        return "";
    }

    /// `kept` gains the bytes of the entry that is wanted; `put`, where there is one, all bytes.
    Seen entry(std::uint64_t index, const std::string& wanted, std::string& kept, Sink* put) {
        const zip_stat_t st = stat(index);
        const std::unique_ptr<zip_file_t, int (*)(zip_file_t*)> file(zip_fopen_index(zip_, index, 0), zip_fclose);
        if (!file) fail("'" + std::string(st.name) + "' cannot be read: " + zip_strerror(zip_));
        Seen seen;
        seen.name = st.name;
        seen.stored = st.comp_method == ZIP_CM_STORE;
        Sha256 digest;
        for (;;) {
            const zip_int64_t n = zip_fread(file.get(), buffer_.data(), buffer_.size());
            if (n < 0) fail("'" + seen.name + "' is damaged: " + zip_file_strerror(file.get()));
            if (n == 0) break;
            seen.bytes += static_cast<std::uint64_t>(n);
            if (seen.bytes > st.size) break;
            const auto bytes = std::span(buffer_).first(static_cast<std::size_t>(n));
            digest.add(bytes);
            if (put) put->write(bytes);
            if (seen.begins.size() < telling_bytes)
                seen.begins.append(reinterpret_cast<const char*>(buffer_.data()), std::min(bytes.size(), telling_bytes - seen.begins.size()));
            if (seen.name == wanted && kept.size() < most_kept)
                kept.append(reinterpret_cast<const char*>(buffer_.data()), std::min(static_cast<std::size_t>(n), most_kept - kept.size()));
        }
        if (seen.bytes != st.size) fail("'" + seen.name + "' does not inflate to the size that the zip says");
        seen.sha256 = digest.hex();
        return seen;
    }

private:
    [[noreturn]] void fail(const std::string& text) const {
        if (failure_) std::rethrow_exception(failure_);
        throw Damage{text};
    }

    zip_stat_t stat(std::uint64_t index) const {
        zip_stat_t st;
        zip_stat_init(&st);
        constexpr zip_uint64_t needed = ZIP_STAT_NAME | ZIP_STAT_SIZE | ZIP_STAT_COMP_SIZE | ZIP_STAT_COMP_METHOD | ZIP_STAT_ENCRYPTION_METHOD;
        if (zip_stat_index(zip_, index, ZIP_FL_ENC_RAW, &st) != 0 || (st.valid & needed) != needed || !st.name)
            fail("the header of entry " + std::to_string(index + 1) + " cannot be read");
        return st;
    }

    const Structure& structure_;
    std::exception_ptr failure_;
    ArchiveInput input_;
    std::vector<std::byte> buffer_;
    zip_t* zip_ = nullptr;
};

}  // namespace

Content unpack_zip(Disk& disk, const Path& path, const std::string& wanted, const PutAt& put_at) {
    Content content;
    content.structure = read_structure(disk, path);
    content.damage = content.structure.damage;
    if (!content.damage.empty()) return content;
    // libzip opens no zip with a name that says it is UTF-8 and is not; which one it is the structure tells.
    const auto& headers = content.structure.entries;
    if (std::any_of(headers.begin(), headers.end(), [](const EntryHeader& entry) { return entry.says_utf8() && bad_utf8_at(entry.name); })) {
        for (const EntryHeader& entry : headers)
            content.entries.push_back({entry.called(), entry.size, "", false, "a name that is not UTF-8 keeps the bundle from being opened", ""});
        return content;
    }
    try {
        Unpacking zip(disk, path, content.structure);
        zip.check_names();
        zip.check_claims();
        for (std::uint64_t i = 0; i < zip.count(); ++i) {
            const std::string unread = zip.unreadable(i);
            if (!unread.empty()) {
                content.entries.push_back({zip.name(i), 0, "", false, unread, ""});
                continue;
            }
            const std::optional<Path> place = put_at(zip.name(i), static_cast<std::size_t>(i));
            const std::unique_ptr<Sink> put = place ? disk.create(*place) : nullptr;
            content.entries.push_back(zip.entry(i, wanted, content.text, put.get()));
            if (put) put->close();
        }
    } catch (const Damage& damage) {
        content.damage = damage.text;
    } catch (const Bomb& bomb) {
        content.inflates = bomb.text;
    }
    return content;
}

Content read_zip(Disk& disk, const Path& path, const std::string& wanted) {
    return unpack_zip(disk, path, wanted, [](const std::string&, std::size_t) { return std::nullopt; });
}

}  // namespace qw::bundle
