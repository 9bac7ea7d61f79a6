// SPDX-License-Identifier: GPL-3.0-or-later
#include "materials/workshop.h"

using namespace qw;
using namespace qw::workshop;

TEST_CASE("tools say what they are needed for, unless they are needed whatever is chosen") {
    CHECK(Counted(Book().made).tools() ==
          "ruler; knife; brush; scissors only for corner; needle only for waxed twine; setter only for eyelets; hammer only for eyelets; awl only for bare holes");
    // The brush is needed for glue and paste alike; without the paste's it is needed for the glue alone and for the strip.
    Book book;
    book.item_named("pva").instead[0].tools.clear();
    CHECK_THAT(Counted(book.made).tools(), Catch::Matchers::Contains("brush only for strong paper or PVA glue;"));
    // Needed for one thing that has no other way, and in one way of another: needed.
    book.length_named("band").tools = {"awl"};
    CHECK_THAT(Counted(book.made).tools(), Catch::Matchers::Contains("awl only for band or bare holes"));
    book.length_named("band").optional = false;
    CHECK_THAT(Counted(book.made).tools(), Catch::Matchers::Contains("; awl;"));
    // What is not there, because there are none of it, needs nothing.
    book.item_named("eyelet").count = book.formula("0");
    CHECK_THAT(Counted(book.made).tools(), !Catch::Matchers::Contains("setter"));
}

TEST_CASE("a step's tools are on the list when it stands, and not for a step that is off") {
    Book book;
    kit::StepTemplate glue, tie, burnish;
    glue.tools = {"ruler", "hammer"};  // on the list already, the hammer for eyelets
    tie.tools = {"awl", "press"};
    tie.uses = {"band"};
    tie.when = book.formula("has_band");
    burnish.tools = {"knife"};
    burnish.when = book.formula("0");
    book.made.tools = {"ruler"};
    book.made.steps = {glue, tie, burnish};
    kit::Pipeline p = shelves();
    p.tools.push_back({"press", "The press", "to press", {"blows"}});
    const auto list = [&](const kit::JournalTemplate& journal) { return Counted(journal, example::conditions(example::a4()), almanac(), p).tools(); };
    const std::string first =
        "ruler; brush; scissors only for corner; needle only for waxed twine; setter only for eyelets; hammer only for eyelets; awl only for bare "
        "holes";
    CHECK(list(book.made) == first + "; press only for band");
    CHECK(list(kit::chosen(book.made, {{"band", {"none", {}}}})) == first);  // neither the press nor, for the step that is off, the knife
    book.made.steps[1].uses.clear();
    CHECK(list(book.made) == first + "; press");
    book.made.steps[2].when.text.clear();
    CHECK(list(book.made) == first + "; press; knife");
}

TEST_CASE("cautions follow from tools and materials, alternatives' too, each once, in the order of the data") {
    CHECK(Counted(Book().made).cautions() == "makers blades points blows loops tangles small fumes mould");
    Book book;
    book.length_named("sewing").instead.clear();
    book.item_named("eyelet").instead.clear();
    CHECK(Counted(book.made).cautions() == "makers blades blows loops small fumes mould");

    // What always stands, stands on a list of nothing.
    kit::JournalTemplate nothing;
    journal::Measures bare;
    bare.journal = &nothing;
    CHECK(materials::count({}, shelves(), bare).cautions.size() == 1);
    nothing.tools = {"knife", "knife"};
    CHECK(materials::count({}, shelves(), bare).cautions.size() == 2);
    CHECK(materials::count({}, shelves(), bare).tools.size() == 1);
}

TEST_CASE("what a kit left out is nowhere on the list, what it chose instead is") {
    kit::Pipeline p = shelves();
    p.journals["example"] = Book().made;
    kit::Manifest m = almanac();
    const auto choose = [&](const std::string& thing, const std::string& choice) { m.choices[thing].value = choice; };
    choose("band", "none");
    choose("corner", "none");
    choose("sewing", "twine");
    choose("eyelet", "bare-holes");
    choose("pva", "wheat-paste");
    choose("tape", "paper-strip");
    const Counted book(kit::chosen(Book().made, m.choices), example::conditions(example::a4()), m, p);
    for (const char* gone : {"elastic", "eyelet", "corner", "tape"}) {
        CAPTURE(gone);
        CHECK_FALSE(book.has(gone));
    }
    CHECK(book.line("twine").metric == "2 of 378 mm; buy 95 cm (20 % more)");
    CHECK(book.line("strip-paper").metric == "1 of 40 x 450 mm, in 2 strips that overlap 20 mm");
    CHECK(book.line("strip-paper").group == Line::Group::paper);
    CHECK(book.line("pva").title == "Paste");  // the key is the item's, what is bought the alternative's material
    CHECK(book.line("pva").metric == "1, for 1132 cm²");
    for (const Line& line : book.list.lines) {
        CAPTURE(line.name);
        CHECK(line.instead.empty());
        CHECK(line.optional == (line.name == "bead"));
    }
    CHECK(book.tools() == "ruler; knife; awl; brush; needle");
    CHECK(book.cautions() == "makers blades points tangles mould");
}
