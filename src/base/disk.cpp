// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/disk.h"

#include "base/digest.h"
#include "base/fault.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <ctime>
#include <dirent.h>
#include <fcntl.h>
#include <linux/fs.h>
#include <sys/ioctl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace qw {

namespace {

[[noreturn]] void refuse(const std::string& doing, const Path& path, int error) {
    FaultNote note{"disk", {path.string(), 0, 0}, "cannot " + doing + ": " + std::strerror(error), "", ""};
    if (error == ENOSPC || error == EDQUOT) note.mend = "make room on the disk and run it again; what was there before is untouched";
    if (error == EACCES || error == EPERM || error == EROFS) note.mend = "give yourself the right to write there, or choose another folder with --out";
    throw Fault(FaultKind::not_carried_out, std::move(note));
}

std::int64_t nanoseconds(const timespec& time) { return std::int64_t{time.tv_sec} * 1'000'000'000 + time.tv_nsec; }

class RealSink : public Sink {
public:
    explicit RealSink(Path path) : path_(std::move(path)) {
        fd_ = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (fd_ < 0) refuse("create the file", path_, errno);
    }
    /// Writes on after the first `length` bytes of a file that may be there already.
    RealSink(Path path, std::uint64_t length) : path_(std::move(path)), end_(length) {
        fd_ = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666);
        if (fd_ < 0) refuse("open the file for writing", path_, errno);
        struct stat st {};
        int error = ::fstat(fd_, &st) != 0 ? errno : S_ISREG(st.st_mode) && static_cast<std::uint64_t>(st.st_size) >= length ? 0 : EINVAL;
        if (!error && ::ftruncate(fd_, static_cast<off_t>(length)) != 0) error = errno;
        if (!error && ::lseek(fd_, static_cast<off_t>(length), SEEK_SET) < 0) error = errno;
        if (!error) return;
        ::close(fd_);  // no destructor runs for what was not constructed
        refuse("write on in the file after " + std::to_string(length) + " bytes", path_, error);
    }
    ~RealSink() override {
        if (fd_ >= 0) ::close(fd_);
    }
    void write(std::span<const std::byte> bytes) override {
        while (!bytes.empty()) {
            const ssize_t n = ::write(fd_, bytes.data(), bytes.size());
            if (n < 0 && errno == EINTR) continue;
            if (n < 0) refuse("write the file", path_, errno);
            bytes = bytes.subspan(static_cast<std::size_t>(n));
            end_ += static_cast<std::uint64_t>(n);
        }
    }
    void write_at(std::uint64_t offset, std::span<const std::byte> bytes) override {
        if (offset > end_ || bytes.size() > end_ - offset) refuse("write beyond the end of the file", path_, EINVAL);
        while (!bytes.empty()) {
            const ssize_t n = ::pwrite(fd_, bytes.data(), bytes.size(), static_cast<off_t>(offset));
            if (n < 0 && errno == EINTR) continue;
            if (n < 0) refuse("write the file", path_, errno);
            bytes = bytes.subspan(static_cast<std::size_t>(n));
            offset += static_cast<std::uint64_t>(n);
        }
    }
    void close() override {
        if (::fsync(fd_) != 0 && errno != EINVAL && errno != EROFS) refuse("sync the file", path_, errno);
        const int fd = fd_;
        fd_ = -1;
        if (::close(fd) != 0) refuse("close the file", path_, errno);
    }

private:
    Path path_;
    int fd_ = -1;
    std::uint64_t end_ = 0;
};

class RealLock : public Lock {
public:
    explicit RealLock(const Path& path) : fd_(::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666)) {
        if (fd_ < 0) refuse("open the lock", path, errno);
        int status = 0;
        while ((status = ::flock(fd_, LOCK_EX | LOCK_NB)) != 0 && errno == EINTR) {}
        if (status == 0) return;
        const int error = errno;
        ::close(fd_);
        if (error != EWOULDBLOCK) refuse("lock", path, error);
        throw Fault(FaultKind::not_carried_out, {"in-use", {path.string(), 0, 0}, "another run holds this lock and is writing here", "",
                                                 "wait until it has ended, then run it again"});
    }
    ~RealLock() override { ::close(fd_); }
    RealLock(const RealLock&) = delete;
    RealLock& operator=(const RealLock&) = delete;

private:
    int fd_;
};

class RealSource : public Source {
public:
    explicit RealSource(Path path) : path_(std::move(path)) {
        // O_NONBLOCK: opening a pipe would otherwise wait for a writer for ever; ordinary files know no difference.
        fd_ = ::open(path_.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
        if (fd_ < 0) refuse("open the file", path_, errno);
        struct stat st {};
        const int error = ::fstat(fd_, &st) != 0 ? errno : S_ISREG(st.st_mode) ? 0 : EINVAL;
        if (error) {
            ::close(fd_);  // no destructor runs for what was not constructed
            refuse("read it as an ordinary file", path_, error);
        }
        size_ = static_cast<std::uint64_t>(st.st_size);
    }
    ~RealSource() override { ::close(fd_); }
    std::uint64_t size() const override { return size_; }
    std::size_t read(std::uint64_t offset, std::span<std::byte> bytes) override {
        std::size_t done = 0;
        while (done < bytes.size()) {
            const ssize_t n = ::pread(fd_, bytes.data() + done, bytes.size() - done, static_cast<off_t>(offset + done));
            if (n < 0 && errno == EINTR) continue;
            if (n < 0) refuse("read the file", path_, errno);
            if (n == 0) break;
            done += static_cast<std::size_t>(n);
        }
        return done;
    }

private:
    Path path_;
    int fd_ = -1;
    std::uint64_t size_ = 0;
};

class RealDisk : public Disk {
public:
    std::unique_ptr<Source> open(const Path& path) override { return std::make_unique<RealSource>(path); }

    std::optional<FileStat> stat(const Path& path) override {
        struct stat st {};
        if (::lstat(path.c_str(), &st) != 0) {
            if (errno == ENOENT || errno == ENOTDIR) return std::nullopt;
            refuse("look at it", path, errno);
        }
        const FileType type = S_ISREG(st.st_mode)   ? FileType::file
                              : S_ISDIR(st.st_mode) ? FileType::folder
                              : S_ISLNK(st.st_mode) ? FileType::link
                                                    : FileType::other;
        return FileStat{type, static_cast<std::uint64_t>(st.st_size), st.st_ino, st.st_dev, st.st_nlink, nanoseconds(st.st_mtim), nanoseconds(st.st_ctim)};
    }

    std::vector<std::string> list(const Path& folder) override {
        DIR* dir = ::opendir(folder.c_str());
        if (!dir) refuse("list the folder", folder, errno);
        std::vector<std::string> names;
        errno = 0;
        while (const dirent* entry = ::readdir(dir)) {
            const std::string name = entry->d_name;
            if (name != "." && name != "..") names.push_back(name);
        }
        const int error = errno;
        ::closedir(dir);
        if (error) refuse("list the folder", folder, error);
        std::sort(names.begin(), names.end());
        return names;
    }

    std::unique_ptr<Sink> create(const Path& path) override { return std::make_unique<RealSink>(path); }
    std::unique_ptr<Sink> extend(const Path& path, std::uint64_t length) override { return std::make_unique<RealSink>(path, length); }

    void make_folders(const Path& path) override {
        std::error_code error;
        std::filesystem::create_directories(path, error);
        if (error) refuse("make the folder", path, error.value());
    }

    void link(const Path& from, const Path& to) override {
        if (::link(from.c_str(), to.c_str()) != 0) refuse("link the file", to, errno);
    }

    bool clone(const Path& from, const Path& to) override {
        const int source = ::open(from.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
        if (source < 0) refuse("open the file", from, errno);
        const int target = ::open(to.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        const int no_target = target < 0 ? errno : 0;
        const bool shared = target >= 0 && ::ioctl(target, FICLONE, source) == 0 && ::fsync(target) == 0;
        ::close(source);
        if (no_target) refuse("create the file", to, no_target);
        ::close(target);
        if (!shared && ::unlink(to.c_str()) != 0) refuse("remove", to, errno);
        return shared;
    }

    void seal(const Path& path) override {
        const int fd = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
        if (fd < 0) refuse("open the file", path, errno);
        const bool done = ::fchmod(fd, 0444) == 0 && ::fsync(fd) == 0;
        const int error = errno;
        ::close(fd);
        if (!done) refuse("make the file read-only and sync it", path, error);
    }

    void rename(const Path& from, const Path& to) override {
        if (::rename(from.c_str(), to.c_str()) != 0) refuse("rename", to, errno);
    }

    void exchange(const Path& a, const Path& b) override {
        if (::renameat2(AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE) != 0)
            refuse("exchange it for the new one", b, errno);
    }

    void remove(const Path& path) override {
        std::error_code error;
        std::filesystem::remove_all(path, error);
        if (error) refuse("remove", path, error.value());
    }

    void sync_folder(const Path& path) override {
        const int fd = ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (fd < 0) refuse("open the folder", path, errno);
        const int status = ::fsync(fd), error = errno;
        ::close(fd);
        if (status != 0 && error != EINVAL) refuse("sync the folder", path, error);
    }

    std::unique_ptr<Lock> lock(const Path& path) override { return std::make_unique<RealLock>(path); }
};

}  // namespace

std::optional<Path> Disk::resolve(const Path& path) {
    std::error_code error;
    Path real = std::filesystem::canonical(path, error);
    if (!error) return real;
    if (error.value() == ENOENT || error.value() == ENOTDIR || error.value() == ELOOP) return std::nullopt;
    refuse("look at it", path, error.value());
}

std::int64_t Disk::now() {
    timespec time{};
    ::clock_gettime(CLOCK_REALTIME_COARSE, &time);
    return nanoseconds(time);
}

std::unique_ptr<Disk> real_disk() { return std::make_unique<RealDisk>(); }

std::string read_text(Disk& disk, const Path& path, std::uint64_t limit) {
    const auto source = disk.open(path);
    if (source->size() > limit) {
        throw Fault(FaultKind::not_understood,
                    {"file-too-large", {path.string(), 0, 0}, "the file has " + std::to_string(source->size()) + " bytes",
                     "at most " + std::to_string(limit), ""});
    }
    std::string text(static_cast<std::size_t>(source->size()), '\0');
    text.resize(source->read(0, std::as_writable_bytes(std::span(text.data(), text.size()))));
    return text;
}

FileDigest digest_of(Disk& disk, const Path& path) {
    const auto source = disk.open(path);
    std::vector<std::byte> buffer(std::size_t{1} << 18);
    FileDigest file;
    Sha256 digest;
    while (const std::size_t n = source->read(file.bytes, buffer)) {
        digest.add(std::span(buffer).first(n));
        file.bytes += n;
    }
    file.sha256 = digest.hex();
    return file;
}

void copy_file(Disk& disk, const Path& from, const Path& to) {
    if (disk.clone(from, to)) return;
    const auto source = disk.open(from);
    const auto sink = disk.create(to);
    std::vector<std::byte> buffer(std::size_t{1} << 18);
    for (std::uint64_t at = 0; const std::size_t n = source->read(at, buffer); at += n) sink->write(std::span<const std::byte>(buffer).first(n));
    sink->close();
}

void write_file(Disk& disk, const Path& path, const std::function<void(Sink&)>& write) {
    const Path part = path.string() + ".part";
    disk.remove(part);
    try {
        const auto sink = disk.create(part);
        write(*sink);
        sink->close();
        disk.rename(part, path);
    } catch (...) {
        try {
            disk.remove(part);
        } catch (const Fault&) {  // the first fault is the one to tell
        }
        throw;
    }
    disk.sync_folder(path.parent_path().empty() ? Path(".") : path.parent_path());
}

void write_file(Disk& disk, const Path& path, std::string_view text) {
    write_file(disk, path, [&](Sink& sink) { sink.write(text); });
}

}  // namespace qw
