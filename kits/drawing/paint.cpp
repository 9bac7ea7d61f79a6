// SPDX-License-Identifier: GPL-3.0-or-later
// Cairo's image surface as plain pixels.
#include <cmath>
#include <memory>
#include <stdexcept>

#include "leaf.h"
#include "pictures.h"

namespace art {
namespace {

struct Drop {
    void operator()(cairo_surface_t* s) const { cairo_surface_destroy(s); }
    void operator()(cairo_t* c) const { cairo_destroy(c); }
};

std::uint8_t plain(unsigned value, unsigned alpha) {
    return static_cast<std::uint8_t>(alpha == 0 ? 255 : (value * 255 + alpha / 2) / alpha);
}

int pixels_of(double millimetres) { return static_cast<int>(std::lround(millimetres * kPixelsPerMillimetre)); }

void unpack(const cairo_surface_t* surface, bool alpha, Pixels& out) {
    auto* s = const_cast<cairo_surface_t*>(surface);
    const unsigned char* data = cairo_image_surface_get_data(s);
    const int stride = cairo_image_surface_get_stride(s);
    for (int y = 0; y < out.height; ++y) {
        const auto* row = reinterpret_cast<const std::uint32_t*>(data + y * stride);
        for (int x = 0; x < out.width; ++x) {
            const unsigned a = alpha ? row[x] >> 24 : 255;
            out.bytes.push_back(plain((row[x] >> 16) & 255, a));
            out.bytes.push_back(plain((row[x] >> 8) & 255, a));
            out.bytes.push_back(plain(row[x] & 255, a));
            if (alpha) out.bytes.push_back(static_cast<std::uint8_t>(a));
        }
    }
}

}  // namespace

Pixels paint(const Drawing& drawing, bool alpha) { return paint(drawing, kCanvas, alpha); }

Pixels paint(const Drawing& drawing, const Box& canvas, bool alpha) {
    Pixels out{pixels_of(canvas.w), pixels_of(canvas.h), alpha ? 4 : 3, {}};
    const std::unique_ptr<cairo_surface_t, Drop> surface(
        cairo_image_surface_create(alpha ? CAIRO_FORMAT_ARGB32 : CAIRO_FORMAT_RGB24, out.width, out.height));
    const std::unique_ptr<cairo_t, Drop> context(cairo_create(surface.get()));
    cairo_scale(context.get(), kPixelsPerMillimetre, kPixelsPerMillimetre);
    cairo_translate(context.get(), -canvas.x, -canvas.y);
    Pen pen(context.get());
    if (!alpha) pen.box(canvas.inset(-1)).fill(kWhite);
    drawing(pen);
    cairo_surface_flush(surface.get());
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(cairo_status_to_string(cairo_status(context.get())));
    out.bytes.reserve(static_cast<std::size_t>(out.width * out.height * out.channels));
    unpack(surface.get(), alpha, out);
    return out;
}

}  // namespace art
