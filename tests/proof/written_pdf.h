// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "proof/file_facts.h"
#include "support/fault_disk.h"

#include <string>
#include <vector>

namespace qw::proof::sample {

/// A PDF put together from objects as text, with a correct cross-reference table.
class WrittenPdf {
public:
    /// Number of the new object; its bytes may be given later.
    int add(const std::string& body = "null");
    void set(int number, const std::string& body) { bodies_[static_cast<std::size_t>(number) - 1] = body; }
    int stream(const std::string& entries, const std::string& data);
    /// `trailer`: entries beside Size and Root.
    std::string bytes(int catalog, const std::string& trailer = "") const;

private:
    std::vector<std::string> bodies_;
};

/// "7 0 R"
std::string ref(int number);
std::string stream_body(const std::string& entries, const std::string& data);

/// A file of one page: entries of the page, of its resources, and its content.
std::string one_page(const std::string& content, const std::string& resources = "",
                     const std::string& page_entries = "/MediaBox [0 0 200 100]");
/// The same with objects that were added before.
std::string one_page(WrittenPdf& pdf, const std::string& content, const std::string& resources,
                     const std::string& page_entries = "/MediaBox [0 0 200 100]");
/// A page that is blank, in a catalog with these entries.
std::string with_catalog(WrittenPdf& pdf, const std::string& entries, const std::string& trailer = "");

/// RGB, 2 × 2 pixels: red green / blue white.
int small_picture(WrittenPdf& pdf);
inline const std::string small_picture_data = "\xff\x01\x01\x01\xff\x01\x01\x01\xff\xff\xff\xff";

/// A disk on which every path reads as the same bytes; it tells what was read and can fail at the n-th read.
class TextDisk : public test::FaultDisk {
public:
    explicit TextDisk(std::string text) : FaultDisk(*real()), text_(std::move(text)) {}
    std::unique_ptr<Source> open(const Path& path) override;

    std::size_t fail_at_read = 0;
    std::size_t reads = 0, longest_read = 0;
    std::uint64_t bytes_read = 0;

private:
    class TextSource;
    static Disk* real();
    std::string text_;
};

FileFacts inspected(const std::string& bytes);
/// Of the only page; fails the test when there is another number of them or damage.
PageFacts only_page(const std::string& bytes);

void put(const Path& path, const std::string& bytes);

}  // namespace qw::proof::sample
