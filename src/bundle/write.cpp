// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip.h"

#include "base/fault.h"
#include "bundle/archive_output.h"
#include "bundle/zip_callback.h"

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <set>

namespace qw::bundle {

namespace {

// Old unzip programs know nothing of ZIP64, which begins where these fields are all ones (APPNOTE 4.4.1.4).
constexpr std::size_t most_entries = 0xffff - 1;
constexpr std::uint64_t most_bytes = 0xffffffffu - 1;
constexpr std::uint32_t plain_file = 0100644u << 16;  // Unix mode in the upper half of the external attributes
constexpr std::size_t packed_at_once = std::size_t{1} << 18;

[[noreturn]] void refuse(const Path& file, const std::string& what, const std::string& expected, const std::string& mend) {
    throw Fault(FaultKind::not_carried_out, {"bundle", {file.string(), 0, 0}, what, expected, mend});
}

void check_names(const Path& zip, const std::vector<Entry>& entries) {
    std::set<std::string> seen;  // names that pass have no capitals, so equal ones are all that differ in case only
    for (const Entry& entry : entries) {
        const std::string fault = fault_in_name(entry.name);
        if (!fault.empty()) refuse(zip, "'" + entry.name + "' cannot be a name in a bundle: " + fault, "", "rename it");
        if (!seen.insert(entry.name).second) refuse(zip, "two files would be '" + entry.name + "' in the bundle", "", "rename one");
    }
}

/// Sizes of all files, and a fault where the bundle could not be opened everywhere. Deflate enlarges what cannot be
/// compressed by 5 bytes a block of at most 16 KiB and a few more (zlib, "Technical Details"): counted as 1/1024 + 64.
std::vector<std::uint64_t> sizes_within_limits(Disk& disk, const Path& zip, const std::vector<Entry>& entries) {
    if (entries.empty()) refuse(zip, "there is nothing to put into the bundle", "", "");
    if (entries.size() > most_entries)
        refuse(zip, "the bundle would hold " + std::to_string(entries.size()) + " files",
               "at most " + std::to_string(most_entries), "make more bundles of fewer files");
    std::vector<std::uint64_t> sizes;
    std::uint64_t sum = 22;  // end record; below: local and central header, each with the name
    for (const Entry& entry : entries) {
        sizes.push_back(disk.open(entry.file)->size());
        const std::uint64_t slack = entry.stored ? 0 : sizes.back() / 1024 + 64;
        sum += std::min(sizes.back(), most_bytes) + slack + 30 + 46 + 2 * entry.name.size();
        if (sum > most_bytes)
            refuse(zip, "the bundle would have 4 GiB or more", "less than 4 GiB, so that every unzip program opens it",
                   "make more bundles of fewer files");
    }
    return sizes;
}

/// One file on its way into the archive. It must stay as long as it was when the limits were checked.
class FileInput : public ZipCallback {
public:
    FileInput(Disk& disk, const Entry& entry, std::uint64_t size, ArchiveOutput& output, std::vector<std::byte>& buffer,
              std::exception_ptr& failure)
        : ZipCallback(failure), disk_(disk), entry_(entry), size_(size), output_(output), buffer_(buffer) {}

private:
    zip_int64_t call(void* data, zip_uint64_t length, zip_source_cmd_t command) override {
        switch (command) {
            case ZIP_SOURCE_SUPPORTS:
                return zip_source_make_command_bitmap(ZIP_SOURCE_OPEN, ZIP_SOURCE_READ, ZIP_SOURCE_CLOSE, ZIP_SOURCE_STAT,
                                                      ZIP_SOURCE_ERROR, ZIP_SOURCE_FREE, -1);
            case ZIP_SOURCE_STAT: return stat(static_cast<zip_stat_t*>(data));
            case ZIP_SOURCE_OPEN: return open();
            case ZIP_SOURCE_READ: return read(static_cast<std::byte*>(data), length);
            case ZIP_SOURCE_CLOSE: return close();
            default: return unsupported();
        }
    }

    zip_int64_t stat(zip_stat_t* st) const {
        zip_stat_init(st);
        st->valid = ZIP_STAT_SIZE | ZIP_STAT_COMP_SIZE | ZIP_STAT_COMP_METHOD;
        st->size = st->comp_size = size_;
        st->comp_method = ZIP_CM_STORE;
        return sizeof *st;
    }

    zip_int64_t open() {
        source_ = disk_.open(entry_.file);
        at_ = have_ = used_ = 0;
        output_.begin_data();
        return 0;
    }

    zip_int64_t read(std::byte* to, zip_uint64_t length) {
        if (used_ == have_ && !refill()) return 0;
        const std::size_t n = static_cast<std::size_t>(std::min<std::uint64_t>(length, have_ - used_));
        std::memcpy(to, buffer_.data() + used_, n);
        used_ += n;
        return static_cast<zip_int64_t>(n);
    }

    bool refill() {
        used_ = 0;
        have_ = source_->read(at_, buffer_);
        at_ += have_;
        if (at_ > size_ || (have_ == 0 && at_ < size_)) changed();
        return have_ > 0;
    }

    zip_int64_t close() {
        output_.end_data();
        source_.reset();
        return 0;
    }

    [[noreturn]] void changed() const {
        refuse(entry_.file, "the file changed while it was packed", "a file of " + std::to_string(size_) + " bytes",
               "let nothing write there, then run it again");
    }

    Disk& disk_;
    const Entry& entry_;
    std::uint64_t size_, at_ = 0;
    std::size_t have_ = 0, used_ = 0;
    ArchiveOutput& output_;
    std::vector<std::byte>& buffer_;
    std::unique_ptr<Source> source_;
};

/// The archive that libzip writes to: new, and written from front to back but for the headers.
class ArchiveCallback : public ZipCallback {
public:
    ArchiveCallback(ArchiveOutput& output, std::exception_ptr& failure) : ZipCallback(failure), output_(output) {}

private:
    zip_int64_t call(void* data, zip_uint64_t length, zip_source_cmd_t command) override {
        switch (command) {
            case ZIP_SOURCE_SUPPORTS: return ZIP_SOURCE_SUPPORTS_WRITABLE;
            case ZIP_SOURCE_STAT: return fail(ZIP_ER_READ, ENOENT);  // it is not there yet
            case ZIP_SOURCE_BEGIN_WRITE: return 0;
            case ZIP_SOURCE_WRITE:
                output_.write({static_cast<const std::byte*>(data), static_cast<std::size_t>(length)});
                return static_cast<zip_int64_t>(length);
            case ZIP_SOURCE_TELL_WRITE: return static_cast<zip_int64_t>(output_.tell());
            case ZIP_SOURCE_SEEK_WRITE: return seek(data, length);
            case ZIP_SOURCE_COMMIT_WRITE: output_.close(); return 0;
            case ZIP_SOURCE_ROLLBACK_WRITE: return 0;  // write_zip removes the file
            default: return unsupported();
        }
    }

    zip_int64_t seek(void* data, zip_uint64_t length) {
        zip_error_t error;
        zip_error_init(&error);
        const zip_int64_t to = zip_source_seek_compute_offset(output_.tell(), output_.end(), data, length, &error);
        zip_error_fini(&error);
        if (to < 0) return fail(ZIP_ER_SEEK, EINVAL);
        output_.seek(static_cast<std::uint64_t>(to));
        return 0;
    }

    ArchiveOutput& output_;
};

/// One zip being written. A failure inside a callback is kept, and thrown again outside of libzip.
class Packing {
public:
    Packing(Disk& disk, const Path& path, const Date& date)
        : disk_(disk), path_(path), output_(disk.create(path), date), buffer_(packed_at_once), archive_(output_, failure_) {
        ZipError error;
        zip_source_t* source = archive_.source(error.get());
        zip_ = source ? zip_open_from_source(source, ZIP_CREATE | ZIP_TRUNCATE, error.get()) : nullptr;
        if (!zip_ && source) zip_source_free(source);
        if (!zip_) fail(error.text());
    }
    ~Packing() {
        if (zip_) zip_discard(zip_);
    }
    Packing(const Packing&) = delete;
    Packing& operator=(const Packing&) = delete;

    void add(const Entry& entry, std::uint64_t size) {
        inputs_.push_back(std::make_unique<FileInput>(disk_, entry, size, output_, buffer_, failure_));
        zip_source_t* source = inputs_.back()->source(zip_get_error(zip_));
        if (!source) fail(zip_strerror(zip_));
        const zip_int64_t added = zip_file_add(zip_, entry.name.c_str(), source, ZIP_FL_ENC_GUESS);
        if (added < 0) {
            zip_source_free(source);
            fail(zip_strerror(zip_));
        }
        const auto index = static_cast<zip_uint64_t>(added);
        // libzip asks the clock for the time of an entry that has none; the right date is put in by ArchiveOutput.
        if (zip_set_file_compression(zip_, index, entry.stored ? ZIP_CM_STORE : ZIP_CM_DEFLATE, entry.stored ? 0 : 9) != 0 ||
            zip_file_set_mtime(zip_, index, 0, 0) != 0 ||
            zip_file_set_external_attributes(zip_, index, 0, ZIP_OPSYS_UNIX, plain_file) != 0)
            fail(zip_strerror(zip_));
    }

    void finish() {
        if (zip_close(zip_) != 0) fail(zip_strerror(zip_));
        zip_ = nullptr;
    }

private:
    [[noreturn]] void fail(const std::string& text) const {
        if (failure_) std::rethrow_exception(failure_);
        refuse(path_, "cannot write the bundle: " + text, "", "");
    }

    Disk& disk_;
    Path path_;
    std::exception_ptr failure_;
    ArchiveOutput output_;
    std::vector<std::byte> buffer_;
    ArchiveCallback archive_;
    std::vector<std::unique_ptr<FileInput>> inputs_;
    zip_t* zip_ = nullptr;
};

}  // namespace

Written write_zip(Disk& disk, const Path& path, const std::vector<Entry>& entries, const Date& date) {
    check_names(path, entries);
    const std::vector<std::uint64_t> sizes = sizes_within_limits(disk, path, entries);
    if (disk.stat(path)) refuse(path, "a bundle is there already", "a new file", "");
    try {
        {
            Packing packing(disk, path, date);
            for (std::size_t i = 0; i < entries.size(); ++i) packing.add(entries[i], sizes[i]);
            packing.finish();
        }
        // Headers are patched when their entry has ended, so the digest cannot be taken on the way; reading again costs
        // little beside hashing, and tells what really lies on the disk.
        const FileDigest digest = digest_of(disk, path);
        return {digest.bytes, digest.sha256};
    } catch (...) {
        try {
            disk.remove(path);
        } catch (...) {  // the first failure is the one to tell
        }
        throw;
    }
}

}  // namespace qw::bundle
