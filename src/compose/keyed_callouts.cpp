// SPDX-License-Identifier: GPL-3.0-or-later
#include "compose/callouts.h"
#include "compose/spread.h"

#include <algorithm>

namespace qw::compose {

namespace {

const Length letter_drop = Length::mm(3.4), letter_gap = Length::mm(4), key_row = Length::mm(5.2), key_gap = Length::mm(5);

std::string letter(std::size_t i) { return std::string(1, static_cast<char>('a' + static_cast<char>(i))); }

}  // namespace

std::optional<Length> draw_keyed_callouts(Canvas& canvas, std::vector<Callout> callouts, const Rect& room) {
    constexpr std::size_t most = 26;
    std::stable_sort(callouts.begin(), callouts.end(), [](const Callout& a, const Callout& b) { return a.dot.x < b.dot.x; });
    std::vector<Length> wanted;
    for (const Callout& c : callouts) wanted.push_back(c.dot.x);
    const auto places = spread(wanted, letter_gap, room.left + letter_gap / 2, room.right - letter_gap / 2);
    if (!places || callouts.size() > most) return std::nullopt;
    const Length cap = canvas.fonts().cap_height(setting::small_strong.cut, setting::small_strong.size);
    const Length letters = room.top - letter_drop - cap - Length::mm(0.6);
    Length x = room.left, y = letters - key_row;
    for (std::size_t i = 0; i < callouts.size(); ++i) {
        const Callout& c = callouts[i];
        canvas.circle(c.dot, Length::mm(0.5), std::nullopt, 0);
        canvas.line(c.dot, {c.dot.x, room.top}, weight::hair);
        canvas.line({c.dot.x, room.top}, {(*places)[i], room.top - letter_drop}, weight::hair);
        canvas.words({(*places)[i], letters}, letter(i), setting::small_strong, Canvas::Anchor::middle);
        const Length named = canvas.width(setting::small_strong, letter(i)) + Length::mm(1.4);
        const Length wide = named + width_of_words_and_figure(canvas, c.words, c.figure);
        if (x > room.left && x + wide > room.right) x = room.left, y -= key_row;
        canvas.words({x, y}, letter(i), setting::small_strong);
        draw_words_and_figure(canvas, {x + named, y}, c.words, c.figure);
        x += wide + key_gap;
    }
    return callouts.empty() ? Length() : room.top - y + Length::mm(1.4);
}

}  // namespace qw::compose
