// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/held_disk.h"

#include "base/fault.h"

#include <algorithm>
#include <cstring>
#include <stdexcept>

namespace qw::artwork::test {

namespace {

class HeldSource : public Source {
public:
    explicit HeldSource(HeldDisk& disk) : disk_(disk) {}
    std::uint64_t size() const override { return disk_.said_size.value_or(disk_.bytes.size()); }
    std::size_t read(std::uint64_t offset, std::span<std::byte> bytes) override {
        if (offset >= disk_.bytes.size()) return 0;
        const std::size_t n = std::min({bytes.size(), disk_.most_at_once, static_cast<std::size_t>(disk_.bytes.size() - offset)});
        if (offset + n > disk_.fails_from) throw Fault(FaultKind::not_carried_out, {"disk", {}, "cannot read the file", "", ""});
        if (n > 0) std::memcpy(bytes.data(), disk_.bytes.data() + offset, n);
        disk_.bytes_read += n;
        return n;
    }

private:
    HeldDisk& disk_;
};

[[noreturn]] void no() { throw std::logic_error("reading artwork writes nothing"); }

}  // namespace

std::unique_ptr<Source> HeldDisk::open(const Path&) { return std::make_unique<HeldSource>(*this); }
std::optional<FileStat> HeldDisk::stat(const Path&) { return FileStat{FileType::file, bytes.size()}; }
std::vector<std::string> HeldDisk::list(const Path&) { no(); }
std::unique_ptr<Sink> HeldDisk::create(const Path&) { no(); }
std::unique_ptr<Sink> HeldDisk::extend(const Path&, std::uint64_t) { no(); }
void HeldDisk::make_folders(const Path&) { no(); }
void HeldDisk::link(const Path&, const Path&) { no(); }
bool HeldDisk::clone(const Path&, const Path&) { no(); }
void HeldDisk::seal(const Path&) { no(); }
void HeldDisk::rename(const Path&, const Path&) { no(); }
void HeldDisk::exchange(const Path&, const Path&) { no(); }
void HeldDisk::remove(const Path&) { no(); }
void HeldDisk::sync_folder(const Path&) { no(); }
std::unique_ptr<Lock> HeldDisk::lock(const Path&) { no(); }

}  // namespace qw::artwork::test
