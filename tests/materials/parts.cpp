// SPDX-License-Identifier: GPL-3.0-or-later
// What parts need is added to what the journal needs; a hole that a punch does not reach is made with another tool.
#include "materials/workshop.h"

#include "parts/holes.h"

using namespace qw;
using namespace qw::workshop;

namespace {

/// An invented tag of 200 x 100 mm with a tab of 20 x 10 mm to be glued, a hole, a length of twine and an eyelet.
struct Tags {
    kit::PartTemplate part;
    kit::Set set;
    parts::Net net;
    parts::Folded folded;

    explicit Tags(Length hole_at) {
        part.name = part.file = "tag";
        part.tools = {"scissors"};
        set.name = "luggage-tags";
        set.role = kit::Role::part;
        set.stock.value = "copy-100";
        twine_.name = "loop";
        twine_.title = "Loop";
        twine_.material = "twine";
        eyelet_.name = "eyelet";
        eyelet_.title = "Eyelet";
        glue_.name = "pva";
        glue_.title = "Glue";
        net.part = &part;
        net.whole = {rectangle(200, 100)};
        net.panels.resize(2);
        net.panels[1].region = {rectangle(20, 10)};
        net.glue = {{1, 0, "pva"}};
        net.holes = {{"loop", "Hole", {hole_at, Length::mm(50)}, Length::mm(5), "punch"}};
        net.lengths = {{&twine_, 1, Length::mm(200), Length::inches(8)}};
        net.items = {{&eyelet_, 1}, {&glue_, 1}};
    }
    Tags(const Tags&) = delete;

    materials::PartsMade made() const { return {&set, 6, &net, &folded}; }

private:
    static parts::Ring rectangle(double width, double height) {
        return {{{}, {}}, {Length::mm(width), {}}, {Length::mm(width), Length::mm(height)}, {{}, Length::mm(height)}};
    }
    kit::LengthTemplate twine_;
    kit::ItemTemplate eyelet_, glue_;
};

kit::Pipeline shelves_with_punch() {
    kit::Pipeline p = shelves();
    p.tools.push_back({"punch", "The punch", "for holes", {"blows"}, Length::mm(35), "awl"});
    return p;
}

const Line& line_of(const materials::List& list, const std::string& name) {
    const auto found = std::find_if(list.lines.begin(), list.lines.end(), [&](const Line& line) { return line.name == name; });
    REQUIRE(found != list.lines.end());
    return *found;
}

bool has_tool(const materials::List& list, const std::string& name) {
    return std::any_of(list.tools.begin(), list.tools.end(), [&](const materials::ToolLine& line) { return line.tool.name == name && line.only_for.empty(); });
}

}  // namespace

TEST_CASE("six tags are added to the lengths, items, glue, sheets and tools of the book") {
    Book book;
    const journal::Measures measures = journal::compute(book.made, example::conditions(example::a4()));
    const Tags tags(Length::mm(30));
    kit::Manifest kit = almanac();
    kit.sets.push_back(tags.set);
    const materials::List list = materials::count(kit, shelves_with_punch(), measures, {{"luggage-tags", 2}}, {}, {tags.made()});

    // 6 x 200 mm and 20 % more is 1.44 m: 1.5 m as it is measured off.
    CHECK_THAT(line_of(list, "twine").metric, Catch::Contains("6 of 200 mm; buy 1.5 m (20 % more)"));
    CHECK_THAT(line_of(list, "twine").us, Catch::Contains("6 of 8 in"));
    CHECK_THAT(line_of(list, "twine").use, Catch::Contains("luggage tags"));
    // The book's three eyelets stand on the same line as one for each tag.
    CHECK_THAT(line_of(list, "eyelet").metric, Catch::StartsWith("3 of 3 mm") && Catch::Contains("6; buy 8 (2 to spare)"));
    // Six tabs of 20 x 10 mm are 12 cm².
    CHECK_THAT(line_of(list, "pva").metric, Catch::Contains("for 12 cm²"));
    CHECK_THAT(line_of(list, "copy-100").use, Catch::Contains("2 for luggage tags"));
    CHECK(has_tool(list, "scissors"));
    CHECK(has_tool(list, "punch"));
}

TEST_CASE("without parts nothing of them is on the list") {
    Book book;
    const materials::List list = materials::count(almanac(), shelves_with_punch(), journal::compute(book.made, example::conditions(example::a4())));
    CHECK_FALSE(has_tool(list, "punch"));
    CHECK(std::none_of(list.lines.begin(), list.lines.end(), [](const Line& line) { return line.use.find("tags") != std::string::npos; }));
}

TEST_CASE("a hole that the punch does not reach is told, and made with the awl") {
    const kit::Pipeline shelf = shelves_with_punch();
    // From the left edge: 35 mm is just reached, 36 is not; the other edges are 50 mm away or more.
    const Tags near(Length::mm(35)), far(Length::mm(36));
    CHECK(parts::from_cut(near.net, near.net.holes[0]) == Length::mm(35));
    CHECK(parts::tool_for(near.net, near.net.holes[0], shelf) == "punch");
    CHECK(parts::holes_out_of_reach(near.net, shelf).empty());

    CHECK(parts::tool_for(far.net, far.net.holes[0], shelf) == "awl");
    const Findings told = parts::holes_out_of_reach(far.net, shelf);
    REQUIRE(told.size() == 1);
    CHECK(told[0].rule == "part-hole-reach");
    CHECK_THAT(told[0].measured, Catch::Contains("36 mm"));
    CHECK_THAT(told[0].limit, Catch::Contains("35 mm"));

    Book book;
    const journal::Measures measures = journal::compute(book.made, example::conditions(example::a4()));
    const materials::List list = materials::count(almanac(), shelf, measures, {}, {}, {far.made()});
    CHECK(has_tool(list, "awl"));
    CHECK_FALSE(has_tool(list, "punch"));
}
