// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/digest.h"
#include "base/disk.h"
#include "pdf/draw.h"

#include <exception>
#include <memory>
#include <streambuf>
#include <vector>

namespace qw::pdf {

/// A PDF being written, as the stream buffer that PoDoFo writes to. It hashes what passes and keeps the newest bytes
/// back until the end, so that the writer can step back a little (PoDoFo turns "endobj" into "stream") and so that
/// the trailer's ID can be made of the digest of the file without reading the file again.
///
/// A Fault of the disk never flies through PoDoFo, which is not made for it: it is kept, what follows is thrown away,
/// and `check` throws it.
class SealedFile final : public std::streambuf {
public:
    SealedFile(Disk& disk, const Path& path);
    /// Removes the file unless it was sealed.
    ~SealedFile() override;

    /// Throws the first failure of the disk, if there was one.
    void check() const;
    /// Throws away whatever comes from now on.
    void discard() { discarded_ = true; }
    /// Puts the ID (32 hexadecimal digits, twice) in place: the beginning of the SHA-256 of the file with zeros for
    /// its digits. Writes the rest, syncs and closes. Throws Fault.
    Drawn seal();

protected:
    std::streamsize xsputn(const char* bytes, std::streamsize count) override;
    int_type overflow(int_type byte) override;
    pos_type seekoff(off_type by, std::ios_base::seekdir from, std::ios_base::openmode which) override;
    pos_type seekpos(pos_type to, std::ios_base::openmode which) override;

private:
    void append(const char* bytes, std::size_t count);
    void pass(const char* bytes, std::size_t count);

    Disk& disk_;
    Path path_;
    std::unique_ptr<Sink> sink_;
    Sha256 digest_;                 ///< of what passed to the sink
    std::uint64_t passed_ = 0;      ///< bytes that passed to the sink
    std::vector<char> held_;        ///< what comes after them
    std::size_t cursor_ = 0;        ///< where the next byte goes, from the start of held_
    bool discarded_ = false, sealed_ = false;
    std::exception_ptr failure_;
};

}  // namespace qw::pdf
