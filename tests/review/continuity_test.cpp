// Sizes change by tenths of a millimetre, and what members use of their strength changes as little: no sliver, no threshold decides.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

using namespace checked;

namespace {

struct Uses {
    bool stands = false;
    std::map<std::string, double> of; ///< by check and subject
};

/// What every member uses.
Uses uses_of(const std::string& text)
{
    const auto bench = bench_of(text);
    const auto stands = run_check("stands", bench->prepared);
    Uses uses;
    uses.stands = std::all_of(stands.begin(), stands.end(), [](const Finding& f) { return f.verdict == Verdict::pass; });
    for (const char* check : {"bending", "shear", "leg", "bearing", "notch", "creep", "sag"})
        for (const Finding& f : run_check(check, bench->prepared))
            if (f.utilisation) uses.of[f.check + " of " + f.subject] = *f.utilisation;
    return uses;
}

struct Jump {
    double size = 0, from = 0, to = 0;
    std::string of;
};

/// Steps of 0.1 mm: no use may change by more than 0.05 from one to the next. Where the piece stands no more, or begins to, that is told, and
/// what its members use then means nothing; it stands in most of them.
void check_continuous(const std::function<std::string(double)>& design, double from, double to)
{
    Jump jump;
    Uses before;
    int steps = 0, compared = 0;
    for (int k = 0; from + 0.1 * k < to + 0.01; ++k) {
        const double size = from + 0.1 * k;
        Uses now = uses_of(design(size));
        ++steps;
        if (now.stands && before.stands) {
            ++compared;
            for (const auto& [of, use] : now.of) {
                const auto was = before.of.find(of);
                if (was != before.of.end() && std::abs(use - was->second) > std::abs(jump.to - jump.from))
                    jump = {size, was->second, use, of};
            }
        }
        before = std::move(now);
    }
    CAPTURE(jump.of, jump.size, jump.from, jump.to, steps);
    CHECK(2 * compared > steps);
    CHECK(std::abs(jump.to - jump.from) <= 0.05);
}

/// A seat of slats along it on two end rails and two bearers, between legs on whose tops the outer slats may lie.
struct Seat {
    double slat = 65, slat_thick = 20, gap = 5, front = 15, leg = 45, rail = 80, length = 1500;
    std::string text() const
    {
        const double inside = length - 2 * leg, top = 420;
        const auto n = [](double v) { return fmt::format("{:.4f}", v); };
        return design({
            head_text({.name = "Seat", .use = "seat", .carries = {"slat"}, .more = "size = [" + n(length) + ", 400, 440]"}),
            wood_text("white ash"),
            part_text("leg", {top, leg, leg}, "z", "y", "{ left = 0, front = 0, bottom = 0 }", "mirror = [\"x\", \"y\"]"),
            part_text("long rail", {inside, rail, 22}, "x", "y", "{ left = " + n(leg) + ", front = 10, top = 420 }",
                      "mirror = [\"y\"]"),
            part_text("end rail", {400 - 2 * leg, rail, 22}, "y", "x", "{ left = 10, front = " + n(leg) + ", top = 420 }",
                      "mirror = [\"x\"]"),
            part_text("bearer", {336, 60, 24}, "y", "x", "{ left = " + n(length / 3 - 11) + ", front = 32, top = 420 }",
                      "mirror = [\"x\"]"),
            part_text("slat", {length, slat, slat_thick}, "x", "z", "{ left = 0, front = " + n(front) + ", bottom = 420 }",
                      "repeat = { count = 5, along = \"y\", gap = " + n(gap) + " }"),
            joint_text("long rail", "leg", "tenon", "PVA", "tenon = { length = 18, width = 55, thickness = 8 }"),
            joint_text("end rail", "leg", "tenon", "PVA", "tenon = { length = 25, width = 55, thickness = 9 }"),
            joint_text("bearer", "long rail", "tenon", "PVA", "tenon = { length = 14, width = 40, thickness = 8 }"),
            joint_text("slat", "bearer", "face", "PVA", "glued = { length = 25, at = \"middle\" }"),
            joint_text("slat", "end rail", "face", "PVA", "glued = { length = 25, at = \"middle\" }"),
        });
    }
};

/// A bookcase shelf of pine in dados, and one loose on cleats.
std::string shelf(double thick, double wide, double cleat)
{
    const double long_ = 860;
    return design({
        head_text({.name = "Shelf", .use = "shelf", .carries = {"shelf"}}),
        wood_text("eastern white pine"),
        part_text("side", {900, 300, 22}, "z", "x", "[0, 0, 0]", fmt::format("copies = [ {{ at = [{}, 0, 0] }} ]", 22 + long_)),
        part_text("cleat", {wide, 40, cleat}, "y", "x", "[22, 0, 400]",
                  fmt::format("copies = [ {{ at = [{}, 0, 400] }} ]", 22 + long_ - cleat)),
        part_text("shelf", {long_, wide, thick}, "x", "z", "[22, 0, 440]"),
        part_text("bottom", {long_ + 16, 260, 22}, "x", "z", "[14, 20, 60]"),
        joint_text("cleat", "side", "face", "PVA"),
        joint_text("bottom", "side", "housing", "PVA"),
    });
}

} // namespace

TEST_CASE("A slat a tenth of a millimetre wider or farther over jumps nowhere", "[continuity]")
{
    SECTION("wider, past the inner faces of the legs")
    {
        check_continuous([](double w) { return Seat{.slat = w, .front = 30}.text(); }, 62, 68);
    }
    SECTION("farther back, onto the tops of the legs")
    {
        check_continuous([](double f) { return Seat{.slat = 60, .gap = 4, .front = f}.text(); }, 36, 49);
    }
    SECTION("its gaps")
    {
        check_continuous([](double g) { return Seat{.gap = g, .front = 20}.text(); }, 3, 7);
    }
    SECTION("its thickness")
    {
        check_continuous([](double t) { return Seat{.slat_thick = t}.text(); }, 17, 20);
    }
}

TEST_CASE("A frame a tenth of a millimetre deeper or longer jumps nowhere", "[continuity]")
{
    SECTION("rails")
    {
        check_continuous([](double r) { return Seat{.rail = r}.text(); }, 76, 82);
    }
    SECTION("legs")
    {
        check_continuous([](double l) { return Seat{.leg = l}.text(); }, 41, 47);
    }
    SECTION("length")
    {
        check_continuous([](double l) { return Seat{.length = l}.text(); }, 1497, 1502);
    }
}

TEST_CASE("A shelf a tenth of a millimetre thicker, wider or farther on its cleats jumps nowhere", "[continuity]")
{
    SECTION("thickness")
    {
        check_continuous([](double t) { return shelf(t, 260, 20); }, 17, 22);
    }
    SECTION("width")
    {
        check_continuous([](double w) { return shelf(20, w, 20); }, 257, 261);
    }
    SECTION("cleats")
    {
        check_continuous([](double c) { return shelf(20, 260, c); }, 8, 14);
    }
}
