// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/content_bytes.h"

#include "proof/damage.h"

namespace qw::proof {

namespace {

/// Collects what a decoder gives until the limit is reached. libqpdf makes a warning of what a pipeline throws, so
/// the limit is remembered and told by the caller.
class BoundedPipe final : public Pipeline {
public:
    BoundedPipe(std::string& bytes, std::uint64_t limit) : Pipeline("content", nullptr), bytes_(bytes), limit_(limit) {}
    void write(unsigned char const* data, std::size_t size) override {
        if (bytes_.size() + size > limit_) full = true;
        if (full) throw Unreadable(too_long);
        bytes_.append(reinterpret_cast<const char*>(data), size);
    }
    void finish() override {}

    static constexpr const char* too_long = "its content is too long";
    bool full = false;

private:
    std::string& bytes_;
    std::uint64_t limit_;
};

}  // namespace

std::string content_bytes(Object streams, Budget& budget) {
    std::string bytes;
    for (auto& stream : elements(streams)) {
        if (!stream.isStream()) throw Unreadable("its content is no stream");
        BoundedPipe pipe(bytes, std::min(budget.at_once, budget.decoded));
        bool decoded = false;
        const bool good = stream.pipeStreamData(&pipe, &decoded, 0, qpdf_dl_specialized);
        if (pipe.full) {
            stream.getOwningQPDF()->getWarnings();  // that of the pipe would be told in place of what follows
            throw Unreadable(BoundedPipe::too_long);
        }
        if (!good || !decoded) throw Unreadable("its content cannot be decoded");
        bytes += '\n';  // a token does not go on from one stream to the next
    }
    budget.decoded -= std::min(budget.decoded, std::uint64_t{bytes.size()});
    return bytes;
}

}  // namespace qw::proof
