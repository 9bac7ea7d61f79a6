// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/manifest.h"

namespace qw::kit {

std::string name_of(Role role) {
    switch (role) {
        case Role::journal_page: return "journal-page";
        case Role::full_sheet: return "full-sheet";
        case Role::part: return "part";
        case Role::extra: break;
    }
    return "extra";
}

bool is_role(const std::string& name) {
    for (const Role role : {Role::journal_page, Role::full_sheet, Role::part, Role::extra})
        if (name == name_of(role)) return true;
    return false;
}

std::string name_of(Place place) {
    switch (place) {
        case Place::as_drawn: return "as-drawn";
        case Place::cover: return "cover";
        case Place::contain: break;
    }
    return "contain";
}

}  // namespace qw::kit
