// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/disk.h"
#include "proof/oddities.h"
#include "proof/page_tree.h"

#include <set>
#include <utility>

namespace qw::proof {

/// Collects what is odd in one file; each kind with the same detail once, with the first page where it was met.
class OddityFinder {
public:
    explicit OddityFinder(Oddities& found) : found_(found) {}

    /// The bytes around the file's header and end.
    void bytes(Source& source);
    void document(QPDF& pdf);
    /// `number` counts from 1. Objects that an earlier page reached are not entered again.
    void page(const TreePage& page, int number);

private:
    void note(OddityKind kind, std::string detail);
    void catalog(Object catalog);
    void layers(Object properties);
    void intents(Object intents);
    void information(Object information, Object metadata);
    void action(Object action);
    void triggers(Object holder);
    void annotations(Object page);
    void boxes(const TreePage& page);
    void resources(Object resources, int depth);
    void picture(Object stream);
    void form(Object stream, int depth);
    void graphics_state(Object state, int depth);
    void colour_space(Object space, int depth);
    void filters(Object stream);
    bool first_visit(Object object);

    Oddities& found_;
    int page_ = 0;
    std::set<QPDFObjGen> seen_;
};

}  // namespace qw::proof
