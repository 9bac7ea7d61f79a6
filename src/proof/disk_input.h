// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "proof/libqpdf.h"

#include <exception>
#include <memory>
#include <string>
#include <vector>

namespace qw::proof {

/// A Source as libqpdf reads it. Small reads, of which a tokenizer makes many, are served from one window; large ones
/// go straight through. libqpdf turns exceptions of a read into warnings in places, so the disk's first Fault is kept;
/// every later read fails with it, and `check()` throws it again.
class DiskInput final : public InputSource {
public:
    DiskInput(std::shared_ptr<Source> source, std::string name);

    void check() const;

    qpdf_offset_t findAndSkipNextEOL() override;
    std::string const& getName() const override { return name_; }
    qpdf_offset_t tell() override { return place_; }
    void seek(qpdf_offset_t offset, int whence) override;
    void rewind() override { place_ = 0; }
    std::size_t read(char* bytes, std::size_t length) override;
    void unreadCh(char) override { --place_; }

private:
    std::size_t fetch(qpdf_offset_t offset, char* bytes, std::size_t length);
    bool load_window(qpdf_offset_t offset);

    std::shared_ptr<Source> source_;
    std::string name_;
    qpdf_offset_t size_ = 0, place_ = 0;
    std::vector<char> window_;
    qpdf_offset_t window_start_ = 0;
    std::size_t window_size_ = 0;
    std::exception_ptr fault_;
};

}  // namespace qw::proof
