// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/gather_pages.h"

#include "base/fault.h"
#include "proof/opened_pdf.h"

#include <qpdf/QPDFWriter.hh>

#include <map>
#include <span>

namespace qw::proof {

namespace {

/// A sink as libqpdf writes to it. A Fault never flies through libqpdf: it is kept, what follows is thrown away, and
/// `check` throws it.
class SinkPipe final : public Pipeline {
public:
    explicit SinkPipe(Sink& sink) : Pipeline("sink", nullptr), sink_(sink) {}
    void write(unsigned char const* data, std::size_t size) override {
        if (fault_) return;
        try {
            sink_.write(std::as_bytes(std::span(data, size)));
        } catch (...) {
            fault_ = std::current_exception();
        }
    }
    void finish() override {}
    void check() const {
        if (fault_) std::rethrow_exception(fault_);
    }

private:
    Sink& sink_;
    std::exception_ptr fault_;
};

/// Layers of all files: which there are, which are hidden, and which do not print (ISO 32000-1 8.11.4).
class Layers {
public:
    void add(QPDF& to, QPDF& from) {
        const Object properties = entry(from.getRoot(), "/OCProperties"), settings = entry(properties, "/D");
        append(to, from, entry(properties, "/OCGs"), all_);
        append(to, from, entry(settings, "/OFF"), hidden_);
        append(to, from, entry(settings, "/AS"), automatic_);
    }
    void describe(QPDF& to) {
        if (all_.getArrayNItems() == 0) return;
        Object settings = Object::newDictionary(), properties = Object::newDictionary();
        settings.replaceKey("/OFF", hidden_);
        settings.replaceKey("/AS", automatic_);
        properties.replaceKey("/OCGs", all_);
        properties.replaceKey("/D", settings);
        to.getRoot().replaceKey("/OCProperties", properties);
    }

private:
    /// What is direct in the source is copied through an object of its own there.
    static void append(QPDF& to, QPDF& from, Object items, Object into) {
        for (Object item : elements(items)) into.appendItem(to.copyForeignObject(item.isIndirect() ? item : from.makeIndirectObject(item)));
    }
    Object all_ = Object::newArray(), hidden_ = Object::newArray(), automatic_ = Object::newArray();
};

void describe(QPDF& pdf, QPDF& first, const Gathered& said) {
    Object root = pdf.getRoot(), preferences = Object::newDictionary(), information = Object::newDictionary();
    preferences.replaceKey("/PrintScaling", Object::newName("/None"));
    preferences.replaceKey("/PickTrayByPDFSize", Object::newBool(true));
    preferences.replaceKey("/DisplayDocTitle", Object::newBool(true));
    if (!said.duplex.empty()) preferences.replaceKey("/Duplex", Object::newName("/" + said.duplex));
    root.replaceKey("/ViewerPreferences", preferences);
    Object intents = entry(first.getRoot(), "/OutputIntents");
    if (intents.isArray()) root.replaceKey("/OutputIntents", pdf.copyForeignObject(intents.isIndirect() ? intents : first.makeIndirectObject(intents)));
    information.replaceKey("/Title", Object::newUnicodeString(said.title));
    pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(information));
}

}  // namespace

void gather_pages(Disk& disk, const std::vector<TakenPage>& pages, const Gathered& said, Sink& to) {
    std::map<Path, std::unique_ptr<OpenedPdf>> opened;  // held until the end: streams are read while they are written
    SinkPipe pipe(to);
    std::string why;
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    const auto check = [&] {
        for (const auto& [path, one] : opened) one->check();
        pipe.check();
    };
    try {
        pdf.emptyPDF();
        Layers layers;
        for (const TakenPage& taken : pages) {
            std::unique_ptr<OpenedPdf>& from = opened[taken.file];
            const bool fresh = !from;
            if (fresh) from = std::make_unique<OpenedPdf>(disk, taken.file);
            if (taken.page < 1 || taken.page > static_cast<int>(from->pages().size()))
                throw Fault(FaultKind::not_understood, {"no-such-page", {taken.file.string(), 0, 0}, "there is no page " + std::to_string(taken.page), "", ""});
            pdf.addPage(from->pages()[static_cast<std::size_t>(taken.page) - 1].page, false);
            if (fresh) layers.add(pdf, from->pdf());
        }
        layers.describe(pdf);
        if (!pages.empty()) describe(pdf, opened.at(pages.front().file)->pdf(), said);
        QPDFWriter writer(pdf);
        writer.setOutputPipeline(&pipe);
        writer.setStreamDataMode(qpdf_s_preserve);
        writer.setObjectStreamMode(qpdf_o_disable);
        writer.setMinimumPDFVersion("1.7");
        writer.setDeterministicID(true);
        writer.write();
    } catch (const Fault&) {
        throw;
    } catch (const std::exception& error) {  // libqpdf's
        why = error.what();
    }
    check();
    if (!why.empty()) throw Fault(FaultKind::not_understood, {"damaged-pdf", {}, "the pages cannot be brought together: " + why, "whole PDFs", ""});
}

}  // namespace qw::proof
