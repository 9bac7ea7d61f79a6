// SPDX-License-Identifier: GPL-3.0-or-later
#include <cairo-pdf.h>

#include <stdexcept>

#include "leaf.h"
#include "pictures.h"

namespace art {

void write_pdf(const std::string& path, const std::string& title, const std::vector<Drawing>& pages) {
    cairo_surface_t* surface = cairo_pdf_surface_create(path.c_str(), kCanvasWidth / kPoint, kCanvasHeight / kPoint);
    cairo_pdf_surface_restrict_to_version(surface, CAIRO_PDF_VERSION_1_5);
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "2026-09-01T00:00:00Z");
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, "2026-09-01T00:00:00Z");
    cairo_t* context = cairo_create(surface);
    cairo_scale(context, 1 / kPoint, 1 / kPoint);
    Pen pen(context);
    for (const Drawing& page : pages) {
        page(pen);
        cairo_show_page(context);
    }
    cairo_surface_finish(surface);
    const cairo_status_t status = cairo_surface_status(surface);
    cairo_destroy(context);
    cairo_surface_destroy(surface);
    if (status != CAIRO_STATUS_SUCCESS) throw std::runtime_error("cannot write " + path);
}

}  // namespace art
