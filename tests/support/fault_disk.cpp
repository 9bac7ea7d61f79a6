// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/fault_disk.h"

#include "base/fault.h"

#include <cstdlib>
#include <stdexcept>
#include <unistd.h>
#include <utility>

namespace qw::test {

class FaultDisk::CountedSink : public Sink {
public:
    CountedSink(FaultDisk& disk, Path path, std::unique_ptr<Sink> inner)
        : disk_(disk), path_(std::move(path)), inner_(std::move(inner)) {}
    void write(std::span<const std::byte> bytes) override {
        disk_.count_write("write", path_);
        inner_->write(bytes);
    }
    void write_at(std::uint64_t offset, std::span<const std::byte> bytes) override {
        disk_.count_write("write_at", path_);
        inner_->write_at(offset, bytes);
    }
    void close() override {
        disk_.count_write("close", path_);
        inner_->close();
    }

private:
    FaultDisk& disk_;
    Path path_;
    std::unique_ptr<Sink> inner_;
};

namespace {

[[noreturn]] void full(const Path& path) {
    throw Fault(FaultKind::not_carried_out, {"disk", {path.string(), 0, 0}, "cannot write: no space left on the test's disk", "", ""});
}

}  // namespace

void FaultDisk::stop_at(std::size_t n, std::function<void()> stop) {
    stop_at_ = n;
    stop_ = std::move(stop);
}

void FaultDisk::count(const std::string& call, const Path& path) {
    calls_.push_back(call + " " + path.string());
    const std::size_t now = calls_.size();
    if (stop_at_ != 0 && now >= stop_at_) {
        if (now == stop_at_ && stop_) stop_();
        throw Stopped{now};
    }
    if (now == fail_at_) full(path);
}

void FaultDisk::count_write(const std::string& call, const Path& path) {
    ++writes_;
    count(call, path);
    if (writes_ == fail_write_at_) full(path);
}

std::unique_ptr<Sink> FaultDisk::create(const Path& path) {
    count("create", path);
    return std::make_unique<CountedSink>(*this, path, inner_.create(path));
}

std::unique_ptr<Sink> FaultDisk::extend(const Path& path, std::uint64_t length) {
    count("extend " + std::to_string(length), path);
    return std::make_unique<CountedSink>(*this, path, inner_.extend(path, length));
}

void FaultDisk::make_folders(const Path& path) {
    count("make_folders", path);
    inner_.make_folders(path);
}

void FaultDisk::link(const Path& from, const Path& to) {
    count("link " + from.string(), to);
    inner_.link(from, to);
}

bool FaultDisk::clone(const Path& from, const Path& to) {
    count("clone " + from.string(), to);
    return inner_.clone(from, to);
}

void FaultDisk::seal(const Path& path) {
    count("seal", path);
    inner_.seal(path);
}

void FaultDisk::rename(const Path& from, const Path& to) {
    count("rename " + from.string(), to);
    inner_.rename(from, to);
}

void FaultDisk::exchange(const Path& a, const Path& b) {
    count("exchange " + a.string(), b);
    inner_.exchange(a, b);
}

void FaultDisk::remove(const Path& path) {
    count("remove", path);
    inner_.remove(path);
}

void FaultDisk::sync_folder(const Path& path) {
    count("sync_folder", path);
    inner_.sync_folder(path);
}

std::unique_ptr<Lock> FaultDisk::lock(const Path& path) {
    count("lock", path);
    return inner_.lock(path);
}

namespace {

/// Memory-backed where there is room: the tests sync thousands of files, which a disk takes a minute for.
Path roomy_folder() {
    const Path memory = "/dev/shm";
    std::error_code error;
    const auto space = std::filesystem::space(memory, error);
    const bool roomy = !error && space.available > (std::uintmax_t{1} << 30) && ::access(memory.c_str(), W_OK) == 0;
    return roomy && !std::getenv("TMPDIR") ? memory : std::filesystem::temp_directory_path();
}

}  // namespace

TestFolder::TestFolder() {
    std::string name = (roomy_folder() / "quirewright-test-XXXXXX").string();
    if (!::mkdtemp(name.data())) throw std::runtime_error("cannot make a folder for the test in " + name);
    path_ = name;
}

TestFolder::~TestFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

}  // namespace qw::test
