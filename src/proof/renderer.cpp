// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/render.h"

#include "base/fault.h"

#include <cmath>
#include <cstdio>
#include <cstring>
#include <mutex>
#include <poppler-document.h>
#include <poppler-global.h>
#include <poppler-page-renderer.h>
#include <poppler-page.h>
#include <poppler-version.h>
#include <utility>

namespace qw::proof {

namespace {

constexpr double most_pixels = 400e6;

/// poppler has one error function for the whole process; each thread listens for itself.
thread_local std::string* heard = nullptr;

void hear(const std::string& message, void*) {
    if (heard && heard->empty()) *heard = message;
}

/// Keeps poppler off the terminal, and the first thing that it says.
class Listening {
public:
    Listening() {
        static std::once_flag once;
        std::call_once(once, [] { poppler::set_debug_error_function(hear, nullptr); });
        heard = &first;
    }
    ~Listening() { heard = nullptr; }
    Listening(const Listening&) = delete;
    Listening& operator=(const Listening&) = delete;

    std::string first;
};

/// "poppler/error (123): Couldn't …" without its head and its line ends.
std::string plain(std::string message) {
    if (message.starts_with("poppler/"))
        if (const auto colon = message.find(": "); colon != std::string::npos) message.erase(0, colon + 2);
    while (!message.empty() && static_cast<unsigned char>(message.back()) <= ' ') message.pop_back();
    return message;
}

Pixels packed(const poppler::image& image) {
    Pixels pixels{static_cast<std::uint32_t>(image.width()), static_cast<std::uint32_t>(image.height()), {}, {}};
    const std::size_t row = std::size_t{pixels.width} * 3;
    pixels.rgb.resize(row * pixels.height);
    for (std::size_t y = 0; y < pixels.height; ++y)
        std::memcpy(pixels.rgb.data() + y * row, image.const_data() + y * static_cast<std::size_t>(image.bytes_per_row()), row);
    return pixels;
}

void set_up(poppler::page_renderer& renderer) {
    renderer.set_paper_color(0xffffffffu);
    renderer.set_render_hint(poppler::page_renderer::antialiasing);
    renderer.set_render_hint(poppler::page_renderer::text_antialiasing);
    renderer.set_image_format(poppler::image::format_rgb24);
}

/// A blank page of 8 points.
std::string smallest_pdf() {
    const char* objects[] = {"<< /Type /Catalog /Pages 2 0 R >>", "<< /Type /Pages /Kids [3 0 R] /Count 1 >>", "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 8 8] >>"};
    std::string pdf = "%PDF-1.4\n", table = "xref\n0 4\n0000000000 65535 f \n";
    int number = 0;
    for (const char* object : objects) {
        char entry[32];
        std::snprintf(entry, sizeof entry, "%010zu 00000 n \n", pdf.size());
        table += entry;
        pdf += std::to_string(++number) + " 0 obj\n" + object + "\nendobj\n";
    }
    const std::string start = std::to_string(pdf.size());
    return pdf + table + "trailer\n<< /Size 4 /Root 1 0 R >>\nstartxref\n" + start + "\n%%EOF\n";
}

/// poppler sets up what all its documents share (its parameters, the sRGB profile) when the first of them is opened and drawn, and
/// looks whether that is done without holding other threads off. So one page is drawn before any other, by one thread, and
/// its document is kept, because the last one to go takes the shared parameters with it.
void begin_alone() {
    static std::once_flag once;
    static std::unique_ptr<poppler::document> kept;
    std::call_once(once, [] {
        const std::string pdf = smallest_pdf();
        poppler::byte_array bytes(pdf.begin(), pdf.end());
        kept.reset(poppler::document::load_from_data(&bytes));
        if (!kept) return;
        const std::unique_ptr<poppler::page> page(kept->create_page(0));
        poppler::page_renderer renderer;
        set_up(renderer);
        if (page) renderer.render_page(page.get(), 72, 72);
    });
}

}  // namespace

struct Renderer::State {
    Path path;
    std::string damage;
    std::unique_ptr<poppler::document> document;

    [[noreturn]] void refuse(int page, const std::string& what) const {
        throw Fault(FaultKind::not_understood,
                    {"page-not-shown", {path.string(), 0, 0}, "page " + std::to_string(page) + " " + what, "", ""});
    }

    std::unique_ptr<poppler::page> open(int page) const {
        if (!document || page < 1 || page > document->pages()) refuse(page, "is not there");
        std::unique_ptr<poppler::page> opened(document->create_page(page - 1));
        if (!opened) refuse(page, "cannot be read");
        return opened;
    }
};

Renderer::Renderer(const Path& path) : state_(std::make_unique<State>()) {
    Listening listening;
    begin_alone();
    state_->path = path;
    state_->document.reset(poppler::document::load_from_file(path.string()));
    if (state_->document && !state_->document->is_locked()) return;
    state_->damage = state_->document ? "it asks for a password" : plain(listening.first);
    if (state_->damage.empty()) state_->damage = "it cannot be opened as a PDF";
    state_->document.reset();
}

std::string renderer_name() { return "poppler " + poppler::version_string(); }

Renderer::~Renderer() = default;

const std::string& Renderer::damage() const { return state_->damage; }

int Renderer::pages() const { return state_->document ? state_->document->pages() : 0; }

Pixels Renderer::page(int page, double dpi) {
    Listening listening;
    const auto opened = state_->open(page);
    const Size size = shown_size(page);
    const double pixels = std::ceil(size.width.in_inches() * dpi) * std::ceil(size.height.in_inches() * dpi);
    if (!(dpi > 0) || !(pixels <= most_pixels)) state_->refuse(page, "would have more than 400 million pixels");
    try {
        poppler::page_renderer renderer;
        set_up(renderer);
        const auto image = renderer.render_page(opened.get(), dpi, dpi);
        if (image.is_valid() && image.format() == poppler::image::format_rgb24) {
            Pixels drawn = packed(image);
            drawn.complaint = plain(listening.first);
            return drawn;
        }
    } catch (const std::bad_alloc&) {
        state_->refuse(page, "needs more memory than there is");
    }
    state_->refuse(page, "cannot be drawn");
}

Size Renderer::shown_size(int page) {
    const auto opened = state_->open(page);
    const auto box = opened->page_rect(poppler::crop_box);
    const Size size{Length::points(std::abs(box.width())), Length::points(std::abs(box.height()))};
    const auto held = opened->orientation();
    return held == poppler::page::landscape || held == poppler::page::seascape ? size.turned() : size;
}

std::string Renderer::text(int page) {
    Listening listening;
    // Keeps what stands on one line on one line, also where a fraction's numerator is raised and its denominator is
    // not; the order of the content stream breaks the line there.
    const auto text = state_->open(page)->text(poppler::rectf(), poppler::page::physical_layout);
    const auto bytes = text.to_utf8();
    return {bytes.begin(), bytes.end()};
}

}  // namespace qw::proof
