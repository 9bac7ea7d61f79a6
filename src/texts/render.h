// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "texts/model.h"

#include <string>

namespace qw::texts {

/// Renders a Mustache text: `{{name}}`, sections `{{#name}}…{{/name}}`, inverted sections `{{^name}}…{{/name}}` and
/// comments. Nothing is escaped: the texts become lines on paper or plain files, where an ampersand is an ampersand.
/// Partials, changed delimiters and dotted names are refused, so that a text can be read by itself.
///
/// Strict where the library is silent: a name that the model does not give at that place, a name that is no text
/// where a text is wanted, an unclosed tag or section are faults. Throws Fault (not_understood) with all of them,
/// each with `shown_file`, line and column; `first_line` is the line of the file on which the text begins.
std::string render(const std::string& template_text, const std::string& shown_file, const Model& model, int first_line = 1);

}  // namespace qw::texts
