// groove-room: floating panels in their grooves.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "judging/fits/groove_fit.hpp"

#include <cmath>

using namespace checked;

namespace {

constexpr double kNanometre = 1e-9;

/// A frame 486 mm wide inside with a panel that goes $engaged deep into grooves $depth deep on either side. The wood moves 0.002 per point
/// more across its grain than along it.
constexpr const char* kFramed = R"(
[piece]
name = "Framed panel"
units = "mm"
use = "none"
size = [606, 22, 700]
[room]
driest = { moisture = $driest }
dampest = { moisture = $dampest }
moisture_at_glue_up = $made
[[wood]]
id = "wood"
properties = { tangential = 0.00205, radial = 0.00205 }
[[part]]
id = "stile"
wood = "wood"
length = 700
width = 60
thickness = 22
grain = "z"
face = "y"
at = { left = 0, front = 0, bottom = 0 }
mirror = ["x"]
[[part]]
id = "rail"
wood = "wood"
length = 486
width = 70
thickness = 22
grain = "x"
face = "y"
at = { left = 60, front = 0, bottom = 0 }
mirror = ["z"]
[[part]]
id = "panel"
wood = "wood"
length = 578
width = $width
thickness = 8
grain = "z"
face = "y"
at = { left = $left, front = 7, bottom = 61 }
[[joint]]
between = ["rail", "stile"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 50, thickness = 7 }
[[joint]]
between = ["panel", "stile"]
kind = "groove"
groove = { depth = $depth }
$stiles
[[joint]]
between = ["panel", "rail"]
kind = "groove"
groove = { depth = 11 }
$rails
)";

struct Door {
    double made = 10, driest = 6, dampest = 12;
    double engaged = 7, depth = 10;
    std::string stiles, rails;
    double left = -1; ///< of the panel; else in the middle

    std::string text() const
    {
        const auto number = [](double v) { return std::to_string(v); };
        const double width = 486 + 2 * engaged;
        return fill(kFramed, {{"driest", number(driest)},
                              {"dampest", number(dampest)},
                              {"made", number(made)},
                              {"width", number(width)},
                              {"left", number(left >= 0 ? left : 303 - width / 2)},
                              {"depth", number(depth)},
                              {"stiles", stiles},
                              {"rails", rails}});
    }
    Finding finding(const std::string& subject = "panel / stile") const
    {
        return finding_of(content_of(text()).findings, "groove-room", subject);
    }
};

const std::string kPinned = "pegs = { diameter = 5, count = 1 }";

} // namespace

TEST_CASE("Groove 10, tongue 7 on each side, 4 mm of shrinkage: 5 mm stay in when it is held, none when it slides",
          "[groove-room]")
{
    const GrooveSide side{0.010, 0.007};
    CHECK_THAT(engagement_held(side, 0.002), WithinAbs(0.005, kNanometre));
    CHECK_THAT(engagement_free(side, side, 0.004), WithinAbs(0.0, kNanometre));
}

TEST_CASE("A panel free to slide shows a gap where the same panel pinned at its middle is sound", "[groove-room]")
{
    const Finding free = Door{}.finding();
    CHECK_THAT(value_of(free, "gap_made"), WithinAbs(0.003, kNanometre));
    CHECK_THAT(value_of(free, "gap_driest"), WithinAbs(0.005, kNanometre));
    CHECK_THAT(value_of(free, "gap_dampest"), WithinAbs(0.002, kNanometre));
    CHECK_THAT(value_of(free, "engaged_driest_free"), WithinAbs(0.0, kNanometre));
    CHECK(free.verdict == Verdict::warn);
    CHECK_THAT(free.headline, ContainsSubstring("a gap shows"));
    REQUIRE(free.remedy);
    CHECK_THAT(free.remedy.words(), ContainsSubstring("pin panel at its middle"));
    REQUIRE(free.utilisation);
    CHECK_THAT(*free.utilisation, WithinAbs(1.0, 1e-6));

    Door pinned;
    pinned.rails = kPinned;
    const Finding held = pinned.finding();
    CHECK(held.verdict == Verdict::pass);
    CHECK_THAT(value_of(held, "engaged_driest"), WithinAbs(0.005, kNanometre));
    CHECK_FALSE(has_value(held, "engaged_driest_free"));
    // Room 3 mm less 1 mm of swelling; of 7 mm it may lose 7 − 10/3.
    CHECK_THAT(*held.utilisation, WithinAbs(2 / (7 - 10 * 0.3333), 1e-6));
}

TEST_CASE("Unequal grooves: a free panel may sit wholly in the deeper one and leave the other", "[groove-room]")
{
    // 7 mm in either groove, 10 deep on the left and 14 on the right; the panel of 500 mm loses 4 mm when driest and gains 2 when dampest.
    std::string text = Door{}.text();
    const std::string both = "between = [\"panel\", \"stile\"]\nkind = \"groove\"\ngroove = { depth = 10.000000 }";
    REQUIRE(text.find(both) != std::string::npos);
    text.replace(text.find(both), both.size(),
                 "between = [\"panel\", \"stile #1\"]\nkind = \"groove\"\ngroove = { depth = 10 }\n[[joint]]\n"
                 "between = [\"panel\", \"stile #2\"]\nkind = \"groove\"\ngroove = { depth = 14 }");
    const Finding f = finding_of(content_of(text).findings, "groove-room", "panel / stile");
    // Pushed to the bottom of the right one, 14 deep, it reaches 7 + 7 − 14 − 4 < 0 into the left one.
    CHECK_THAT(value_of(f, "engaged_driest_free"), WithinAbs(-0.004, kNanometre));
    CHECK(f.verdict == Verdict::warn);
    // Pinned at its middle it keeps 5 of 14 mm on the right, 5 of 10 on the left.
    std::string pinned = text;
    pinned.replace(pinned.find("groove = { depth = 11 }"), 23, "groove = { depth = 11 }\n" + kPinned);
    const Finding held = finding_of(content_of(pinned).findings, "groove-room", "panel / stile");
    CHECK_THAT(value_of(held, "engaged_driest"), WithinAbs(0.005, kNanometre));
    CHECK(held.verdict == Verdict::pass);
}

TEST_CASE("A spot of glue in the middle of the rails holds a panel as a pin does", "[groove-room]")
{
    Door door;
    door.rails = "glue = \"PVA\"\nglued = { length = 20, at = \"middle\" }";
    const Finding f = door.finding();
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(value_of(f, "engaged_driest"), WithinAbs(0.005, kNanometre));
}

TEST_CASE("A panel glued in one groove moves its whole width in the other; the glued groove is cross-grain's matter",
          "[groove-room]")
{
    Door door;
    std::string text = door.text();
    const std::string both = "between = [\"panel\", \"stile\"]\nkind = \"groove\"\ngroove = { depth = 10.000000 }\n";
    const std::size_t at = text.find(both);
    REQUIRE(at != std::string::npos);
    text.replace(at, both.size(),
                 "between = [\"panel\", \"stile #1\"]\nkind = \"groove\"\nglue = \"PVA\"\ngroove = { depth = 10 "
                 "}\n[[joint]]\nbetween = [\"panel\", \"stile #2\"]\nkind = \"groove\"\ngroove = { depth = 10 }\n");
    const Finding f = finding_of(content_of(text).findings, "groove-room", "panel / stile");
    // From the middle of the glue, 3.5 mm inside the edge: 496.5 mm of panel move here.
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.003 - 0.4965 * 0.002 * 2, kNanometre));
    CHECK_THAT(value_of(f, "engaged_driest"), WithinAbs(0.007 - 0.4965 * 0.002 * 4, kNanometre));
    CHECK(f.verdict == Verdict::warn); // 3.03 mm of the 3.33 wanted
}

TEST_CASE("A panel made too dry closes its grooves, and both remedies work", "[groove-room]")
{
    Door door;
    door.made = 6;
    door.driest = 6;
    door.dampest = 13;
    const Finding f = door.finding();
    // 500 × 0.002 × 7 = 7 mm, half of it at each side, and 3 mm of room.
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(-0.0005, kNanometre));
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("bottoms out"));
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("cut the groove 11 mm deep"));
    CHECK_THAT(f.remedy.words(), ContainsSubstring("today (at 6 %)"));
    CHECK_THAT(value_of(f, "groove_depth_today"), WithinAbs(0.011, kNanometre));

    Door deeper = door;
    deeper.depth = 11;
    CHECK(deeper.finding().verdict == Verdict::pass);

    // The other remedy names the panel for the groove as it is.
    const std::string key = "cut panel ";
    const std::size_t at = f.remedy.words().find(key);
    REQUIRE(at != std::string::npos);
    Door narrower = door;
    narrower.engaged = (std::stod(f.remedy.words().substr(at + key.size())) - 486) / 2;
    CHECK(narrower.engaged < door.engaged);
    if (f.remedy.words().find("pin it at its middle", at) != std::string::npos) narrower.rails = kPinned;
    CHECK(narrower.finding().verdict == Verdict::pass);
}

TEST_CASE("A panel that shrinks out of its groove fails; a deeper groove with a wider panel works", "[groove-room]")
{
    Door door;
    door.made = 14;
    door.dampest = 14;
    door.engaged = 3;
    door.depth = 6;
    const Finding f = door.finding(); // 492 × 0.002 × 8 = 7.9 mm, 3.9 at each side
    CHECK(f.verdict == Verdict::fail);
    CHECK_THAT(f.headline, ContainsSubstring("shrinks out of its groove"));
    Door better = door;
    better.depth = value_of(f, "groove_depth_today") * 1000;
    better.engaged = (value_of(f, "panel_size_today") * 1000 - 486) / 2;
    better.rails = kPinned;
    CHECK(better.finding().verdict == Verdict::pass);
}

TEST_CASE("Room is judged from both sides together where the panel is free, from each side where it is held", "[groove-room]")
{
    Door door;
    door.made = 6;
    door.dampest = 11;         // 5 mm of swelling, 2.5 at each side, of 6 mm of room in all
    door.left = 303 - 250 - 2; // 2 mm off the middle: 1 mm of room on the left, 5 on the right
    const Finding free = door.finding();
    CHECK(free.verdict != Verdict::fail);
    CHECK_THAT(value_of(free, "gap_made"), WithinAbs(0.001, kNanometre));
    door.rails = kPinned;
    CHECK(door.finding().verdict == Verdict::fail);
}

TEST_CASE("Along its grain a panel needs no room", "[groove-room]")
{
    const Finding f = Door{}.finding("panel / rail");
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(value_of(f, "gap_made"), WithinAbs(0.002, kNanometre));
    // Panel and stiles grow alike along their grain.
    CHECK_THAT(value_of(f, "gap_dampest"), WithinAbs(0.002, kNanometre));
}

TEST_CASE("What a floating panel lacks is named", "[groove-room]")
{
    std::string text = Door{}.text();
    const std::string depth = "groove = { depth = 10.000000 }\n";
    text.erase(text.find(depth), depth.size());
    const Finding f = finding_of(content_of(text).findings, "groove-room", "panel / stile");
    CHECK(f.verdict == Verdict::cannot_tell);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("groove = { depth"));

    std::string unknown = Door{}.text();
    const std::string movement = "tangential = 0.00205, radial = 0.00205";
    unknown.replace(unknown.find(movement), movement.size(), "tangential = 0.00205");
    CHECK(finding_of(content_of(unknown).findings, "groove-room", "panel / stile").verdict == Verdict::cannot_tell);
}

TEST_CASE("The least groove takes the panel from driest to dampest with a third of its depth to spare", "[groove-room]")
{
    for (const double swell : {0.0, 0.5e-3, 4e-3})
        for (const double shrink : {0.0, 1e-3, 3e-3}) {
            CAPTURE(swell, shrink);
            const EdgeDemand demand{swell, shrink, 0.1e-3, 1.0 / 3, false};
            const GrooveAdvice advice = least_groove(demand, 0.5e-3);
            CHECK(advice.depth - advice.engaged - swell >= 0.1e-3 - kNanometre);
            CHECK(advice.engaged - shrink >= advice.depth / 3 - kNanometre);
            CHECK_THAT(std::remainder(advice.depth, 0.5e-3), WithinAbs(0, kNanometre));
        }
}

TEST_CASE("The worked door by the damp coast fails in its stiles and not in its rails", "[groove-room]")
{
    const auto findings = content_of(built_in_design("cabinet-door-damp-coast")).findings;
    CHECK(finding_of(findings, "groove-room", "panel / stile").verdict == Verdict::fail);
    CHECK(finding_of(findings, "groove-room", "panel / rail").verdict == Verdict::pass);
}

TEST_CASE("The groove and the panel to cut today are told also where all is well", "[groove-room]")
{
    Door door;
    door.rails = kPinned;
    const Finding f = door.finding();
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(value_of(f, "groove_depth_today"), WithinAbs(0.010, kNanometre));
    CHECK_THAT(value_of(f, "panel_size_today"), WithinAbs(0.500, 1e-7));
    CHECK_THAT(value_of(f, "moisture_made"), WithinAbs(10, kNanometre));
    CHECK_THAT(value_of(f, "moisture_driest"), WithinAbs(6, kNanometre));
    CHECK_THAT(value_of(f, "moisture_dampest"), WithinAbs(12, kNanometre));
    // Each edge: 1 mm out, 2 mm back, 0.1 mm of room and 0.2 mm of tolerance, over two thirds: 4.95 mm, up to the next half.
    CHECK_THAT(value_of(f, "groove_depth_least"), WithinAbs(0.005, kNanometre));
    Door shallow = door;
    shallow.depth = 5;
    shallow.engaged = 3.78; // the middle between what it must reach, 3.67 mm, and what leaves room, 3.9
    CHECK(shallow.finding().verdict == Verdict::pass);
    shallow.depth = 4.5;
    CHECK(shallow.finding().verdict != Verdict::pass);
}
