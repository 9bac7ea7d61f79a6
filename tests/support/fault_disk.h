// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace qw::test {

/// Thrown in place of a call at which the run ends. No std::exception and no Fault, so that nothing in the program
/// takes it for an error that it could mend.
struct Stopped {
    std::size_t at;
};

/// Another disk that can be made to fail or to end the run at any of its changing calls. Counted, from 1, are
/// `create`, `extend`, `write`, `write_at` and `close` of its files, `make_folders`, `link`, `clone`, `seal`, `rename`,
/// `exchange`, `remove`, `sync_folder` and `lock`; reading is not. Everything else is done by `inner`, which must live longer, as must
/// this disk than its files.
class FaultDisk : public Disk {
public:
    explicit FaultDisk(Disk& inner) : inner_(inner) {}

    /// The n-th changing call throws Fault (not_carried_out, code "disk") as a full disk would; nothing of it is done.
    void fail_at(std::size_t n) { fail_at_ = n; }
    /// The same for the n-th call of `write`, `write_at` or `close` of any file, counted apart.
    void fail_write_at(std::size_t n) { fail_write_at_ = n; }
    /// `stop` is called before the n-th changing call, and may look at what lies there or end the process. When it
    /// returns, that call and all later changing ones throw Stopped, so that no destructor can tidy up: to the
    /// files it looks like a run that was killed.
    void stop_at(std::size_t n, std::function<void()> stop = {});

    std::size_t changes() const { return calls_.size(); }
    std::size_t writes() const { return writes_; }
    /// Every changing call so far, as "exchange /out/a /out/b", in order; the last one may have failed.
    const std::vector<std::string>& calls() const { return calls_; }

    std::unique_ptr<Source> open(const Path& path) override { return inner_.open(path); }
    std::optional<FileStat> stat(const Path& path) override { return inner_.stat(path); }
    std::optional<Path> resolve(const Path& path) override { return inner_.resolve(path); }
    std::vector<std::string> list(const Path& folder) override { return inner_.list(folder); }
    std::int64_t now() override { return inner_.now(); }
    std::unique_ptr<Sink> create(const Path& path) override;
    std::unique_ptr<Sink> extend(const Path& path, std::uint64_t length) override;
    void make_folders(const Path& path) override;
    void link(const Path& from, const Path& to) override;
    bool clone(const Path& from, const Path& to) override;
    void seal(const Path& path) override;
    void rename(const Path& from, const Path& to) override;
    void exchange(const Path& a, const Path& b) override;
    void remove(const Path& path) override;
    void sync_folder(const Path& path) override;
    std::unique_ptr<Lock> lock(const Path& path) override;

private:
    class CountedSink;
    void count(const std::string& call, const Path& path);
    void count_write(const std::string& call, const Path& path);

    Disk& inner_;
    std::vector<std::string> calls_;
    std::size_t writes_ = 0, fail_at_ = 0, fail_write_at_ = 0, stop_at_ = 0;
    std::function<void()> stop_;
};

/// A new empty folder for one test, removed with all in it at the end. In memory where there is room; with TMPDIR set,
/// there.
class TestFolder {
public:
    TestFolder();
    ~TestFolder();
    TestFolder(const TestFolder&) = delete;
    TestFolder& operator=(const TestFolder&) = delete;
    const Path& path() const { return path_; }
    Path operator/(const std::string& name) const { return path_ / name; }

private:
    Path path_;
};

}  // namespace qw::test
