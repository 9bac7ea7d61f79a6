// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/content_walk.h"

#include "base/digest.h"
#include "proof/annotations.h"
#include "proof/content_bytes.h"
#include "proof/content_tokens.h"
#include "proof/damage.h"
#include "proof/graphics_state.h"
#include "proof/operators.h"

#include <algorithm>
#include <utility>

namespace qw::proof {

class ContentWalk::Reader final : public ContentReader {
public:
    Reader(PictureBook& pictures, Budget& budget, PageFacts& facts) : pictures_(pictures), budget_(budget), facts_(facts) {}

    void content(Object streams, Object resources) {
        const std::string bytes = content_bytes(streams, budget_);
        if (facts_.content_sha256.empty()) facts_.content_sha256 = sha256_of(bytes);  // the page's own comes first
        std::swap(resources, resources_);
        const auto outer_states = std::exchange(states_, {});
        const GraphicsState outer = state_;
        read_content(bytes, *this, spend_);
        path_.clear();
        clip_next_ = false;
        state_ = outer;
        states_ = outer_states;
        std::swap(resources, resources_);
    }

    /// `place` maps the form's own matrix' result on; the identity but for annotations.
    void form(Object form, const Matrix& place) {
        const QPDFObjGen id = form.getObjGen();
        if (std::find(open_forms_.begin(), open_forms_.end(), id) != open_forms_.end())
            throw Unreadable("a form paints itself");
        if (static_cast<int>(open_forms_.size()) >= budget_.form_depth) throw Unreadable("forms are nested too deep");
        open_forms_.push_back(id);
        const GraphicsState outer = state_;
        concatenate(place);
        concatenate(matrix_of(entry(form, "/Matrix")).value_or(Matrix{}));
        if (const auto box = box_of(entry(form, "/BBox"))) state_.narrow(around(state_.ctm, *box));
        const Object own = entry(form, "/Resources");
        content(form, is_null(own) ? resources_ : own);
        state_ = outer;
        open_forms_.pop_back();
    }

    void operation(std::uint32_t code, const Operands& operands) override {
        if (!state_operation(code, operands) && !path_operation(code, operands)) paint_operation(code, operands);
    }

    void inline_image(Object dictionary, std::string data) override {
        place(inline_picture(dictionary, std::move(data), resources_));
    }

private:
    bool state_operation(std::uint32_t code, const Operands& o) {
        switch (code) {
            case op("q"):
                if (static_cast<int>(states_.size()) >= budget_.state_depth) throw Unreadable("q is nested too deep");
                states_.push_back(state_);
                return true;
            case op("Q"):
                if (states_.empty()) return true;  // one too many is common, and every viewer passes over it
                state_ = states_.back();
                states_.pop_back();
                return true;
            case op("cm"):
                concatenate({o.number(6, 0), o.number(6, 1), o.number(6, 2), o.number(6, 3), o.number(6, 4), o.number(6, 5)});
                return true;
            default: return false;
        }
    }

    void concatenate(const Matrix& first) {
        state_.ctm = state_.ctm.after(first);
        if (!is_finite(state_.ctm)) throw Unreadable("the matrices grow beyond all numbers");
    }

    bool path_operation(std::uint32_t code, const Operands& o) {
        const Matrix& ctm = state_.ctm;
        switch (code) {
            case op("m"): path_.move(ctm, o.spot(2, 0)); return true;
            case op("l"): path_.line(ctm, o.spot(2, 0)); return true;
            case op("c"): path_.line(ctm, o.spot(6, 0)); [[fallthrough]];
            case op("v"):
            case op("y"):
                path_.line(ctm, o.spot(4, 0));
                path_.line(ctm, o.spot(4, 2));
                return true;
            case op("re"): path_.rectangle(ctm, o.spot(4, 0), o.number(4, 2), o.number(4, 3)); return true;
            case op("W"):
            case op("W*"): clip_next_ = true; return true;
            default: return false;
        }
    }

    void paint_operation(std::uint32_t code, const Operands& o) {
        switch (code) {
            case op("S"): case op("s"): case op("f"): case op("F"): case op("f*"):
            case op("B"): case op("B*"): case op("b"): case op("b*"):
                facts_.has_paths = facts_.has_paths || path_.box().has_value();
                return end_path();
            case op("n"): return end_path();
            case op("sh"): facts_.has_paths = true; return;
            case op("k"): case op("K"): facts_.paints_cmyk = true; return;
            case op("Tj"): case op("TJ"): case op("'"): case op("\""):
                facts_.has_text = facts_.has_text || o.text;
                return;
            case op("Do"): return paint(o.name);
            default: return;
        }
    }

    /// W takes effect after the path has been painted (8.5.4).
    void end_path() {
        if (clip_next_ && path_.box()) state_.narrow(*path_.box());
        clip_next_ = false;
        path_.clear();
    }

    void paint(const std::string& name) {
        Object object = entry(entry(resources_, "/XObject"), name);
        if (!object.isStream()) throw Unreadable("content paints " + name + ", which the resources do not have");
        const Object kind = entry(object, "/Subtype");
        if (is_name(kind, "Image")) place(pictures_.of(object));
        if (is_name(kind, "Form")) form(object, {});
    }

    void place(PlacedPicture picture) {
        if (budget_.pictures == 0) throw Unreadable("it paints too many pictures");
        --budget_.pictures;
        picture.place = state_.ctm;
        if (state_.clip) picture.clip = state_.clip->rect();
        facts_.pictures.push_back(std::move(picture));
    }

    PictureBook& pictures_;
    Budget& budget_;
    PageFacts& facts_;
    Object resources_ = Object::newNull();
    GraphicsState state_;
    std::vector<GraphicsState> states_;
    PathBounds path_;
    bool clip_next_ = false;
    std::vector<QPDFObjGen> open_forms_;
    const std::function<void()> spend_ = [this] {
        if (budget_.tokens == 0) throw Unreadable("its content is too long");
        --budget_.tokens;
    };
};

ContentWalk::ContentWalk(PictureBook& pictures, Budget& budget, PageFacts& facts)
    : reader_(std::make_unique<Reader>(pictures, budget, facts)) {}
ContentWalk::~ContentWalk() = default;

void ContentWalk::page(Object page, Object resources) {
    reader_->content(entry(page, "/Contents"), resources);
    for (const auto& shown : shown_appearances(page)) reader_->form(shown.form, shown.place);
}

}  // namespace qw::proof
