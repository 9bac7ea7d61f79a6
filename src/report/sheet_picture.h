// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/audit_report.h"

#include <map>
#include <string>
#include <vector>

namespace qw::report {

/// The pictures of a report, each one's bytes in it once, however often it is shown.
class PictureStore {
public:
    /// The picture's name in the page; empty for an empty one.
    std::string name_of(const std::vector<std::byte>& jpeg);
    /// To be put into the page before anything shows them.
    std::string definitions() const;

private:
    std::map<std::vector<std::byte>, std::string> names_;
    std::vector<const std::vector<std::byte>*> in_order_;
};

/// A page as it was rendered. `label` says in words what is to be seen.
std::string page_picture(const std::string& name, Size sheet, const std::string& label);

/// The same with what matters drawn over it: trim, safe area, margins, ink, what of the artwork is lost. Lines differ in
/// their dashes and stand on a light ground, so that they are told apart without colour and on any artwork.
std::string marked_picture(const std::string& name, const SheetRow& row, const std::string& label);

/// What the lines mean.
std::string key_of_marks();

}  // namespace qw::report
