// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/exif.h"

#include "artwork/bytes.h"

namespace qw::artwork {

namespace {

enum Tag : std::uint16_t { orientation = 0x0112, x_resolution = 0x011A, y_resolution = 0x011B, resolution_unit = 0x0128 };
enum Type : std::uint16_t { two_bytes = 3, rational = 5 };
constexpr double cm_per_inch = 2.54;

class Tiff {
public:
    explicit Tiff(std::span<const std::byte> bytes) : bytes_(bytes) {
        if (bytes.size() < 8) return;
        const std::uint16_t order = big16(bytes, 0);
        little_ = order == 0x4949;
        valid_ = (little_ || order == 0x4D4D) && number16(2) == 42;
    }
    bool valid() const { return valid_; }
    bool holds(std::uint64_t at, std::uint64_t length) const { return at <= bytes_.size() && length <= bytes_.size() - at; }
    std::uint16_t number16(std::size_t at) const {
        const std::uint16_t big = big16(bytes_, at);
        return little_ ? static_cast<std::uint16_t>(big << 8 | big >> 8) : big;
    }
    std::uint32_t number32(std::size_t at) const {
        const std::uint32_t first = number16(at), second = number16(at + 2);
        return little_ ? second << 16 | first : first << 16 | second;
    }

private:
    std::span<const std::byte> bytes_;
    bool little_ = false, valid_ = false;
};

constexpr std::size_t entry_bytes = 12;

std::optional<int> short_value(const Tiff& tiff, std::size_t entry) {
    if (tiff.number16(entry + 2) != two_bytes || tiff.number32(entry + 4) != 1) return std::nullopt;
    return tiff.number16(entry + 8);
}

double rational_value(const Tiff& tiff, std::size_t entry) {
    const std::uint32_t at = tiff.number32(entry + 8);
    if (tiff.number16(entry + 2) != rational || tiff.number32(entry + 4) != 1 || !tiff.holds(at, 8)) return 0;
    const std::uint32_t divisor = tiff.number32(at + 4);
    return divisor == 0 ? 0 : static_cast<double>(tiff.number32(at)) / divisor;
}

}  // namespace

Exif read_exif(std::span<const std::byte> bytes) {
    Exif exif;
    const Tiff tiff(bytes);
    if (!tiff.valid()) return exif;
    const std::uint32_t directory = tiff.number32(4);
    if (!tiff.holds(directory, 2)) return exif;
    Density density;
    int unit = 2;  // inches, when nothing is said
    for (std::size_t i = 0, count = tiff.number16(directory); i < count; ++i) {
        const std::size_t entry = directory + 2 + i * entry_bytes;
        if (!tiff.holds(entry, entry_bytes)) break;
        switch (tiff.number16(entry)) {
            case orientation: exif.turn = short_value(tiff, entry).value_or(1); break;
            case x_resolution: density.x = rational_value(tiff, entry); break;
            case y_resolution: density.y = rational_value(tiff, entry); break;
            case resolution_unit: unit = short_value(tiff, entry).value_or(0); break;
            default: break;
        }
    }
    if (exif.turn < 1 || exif.turn > 8) exif.turn = 1;
    const double factor = unit == 2 ? 1 : unit == 3 ? cm_per_inch : 0;
    if (density.x * factor > 0 && density.y * factor > 0) exif.density = Density{density.x * factor, density.y * factor};
    return exif;
}

}  // namespace qw::artwork
