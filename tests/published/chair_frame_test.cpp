// How much of the moment of a push the joints of the side rails carry, against a published share.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"
#include "mechanics/structure/structure.hpp"

#include <fmt/core.h>

#include <cmath>
#include <tuple>

using namespace checked;

namespace {

/// A four-legged chair to the seat, Scots pine, as chairs of that size are made: legs 40 × 40, rails 60 × 22 at the seat, and where asked
/// stretchers 40 × 22 between front and back legs, 150 mm above the floor. Pushed from front to back at the height of its rails, and weighted
/// so that it keeps its feet on the floor. The publication's own sizes are not in its abstract.
std::string chair(bool stretchers)
{
    std::string text = head_text({.name = "Chair"}) + wood_text("Scots pine");
    struct Stick {
        std::string id, grain, face;
        double length, width, thickness, x, y, z;
    };
    std::vector<Stick> sticks;
    for (const auto& [id, x, y] : {std::tuple{"front left", 0.0, 0.0}, std::tuple{"front right", 380.0, 0.0},
                                   std::tuple{"back left", 0.0, 380.0}, std::tuple{"back right", 380.0, 380.0}})
        sticks.push_back({id, "z", "y", 430, 40, 40, x, y, 0});
    sticks.push_back({"front rail", "x", "y", 340, 60, 22, 40, 9, 365});
    sticks.push_back({"back rail", "x", "y", 340, 60, 22, 40, 389, 365});
    sticks.push_back({"left rail", "y", "x", 340, 60, 22, 9, 40, 365});
    sticks.push_back({"right rail", "y", "x", 340, 60, 22, 389, 40, 365});
    if (stretchers) {
        sticks.push_back({"left stretcher", "y", "x", 340, 40, 22, 9, 40, 150});
        sticks.push_back({"right stretcher", "y", "x", 340, 40, 22, 389, 40, 150});
    }
    for (const Stick& s : sticks)
        text += part_text(s.id, {s.length, s.width, s.thickness}, s.grain, s.face, fmt::format("[{}, {}, {}]", s.x, s.y, s.z));
    const auto join = [&](const std::string& rail, const std::string& a, const std::string& b, int deep) {
        for (const std::string& leg : {a, b})
            text +=
                joint_text(rail, leg, "tenon", "PVA", fmt::format("tenon = {{ length = 18, width = {}, thickness = 8 }}", deep));
    };
    join("front rail", "front left", "front right", 40);
    join("back rail", "back left", "back right", 40);
    for (const std::string side : {"left", "right"}) {
        join(side + " rail", "front " + side, "back " + side, 40);
        if (stretchers) join(side + " stretcher", "front " + side, "back " + side, 30);
    }
    text += load_text("push", "front rail", 400, "[210, 20, 395]", "direction = [0, 1, 0]") +
            load_text("ballast on front rail", "front rail", 1500, "[210, 20, 395]", "lasting = true") +
            load_text("ballast on back rail", "back rail", 1500, "[210, 400, 395]", "lasting = true");
    return text;
}

/// Share of the push's moment about the floor that the joints of the side rails hand to the legs.
double share_of_rails(const Bench& bench)
{
    const Statics& statics = bench.prepared.statics;
    const Structure& frame = *statics.frame;
    std::size_t push = 0;
    for (std::size_t k = 0; k < statics.cases.cases.size(); ++k)
        if (statics.cases.cases[k].name == "push") push = k;
    const auto solve = [&](bool pushed) {
        std::vector<CopyLoad> loads = statics.cases.lasting;
        const auto& own = statics.cases.cases[push].loads;
        if (pushed) loads.insert(loads.end(), own.begin(), own.end());
        return frame.solve({loads}).front();
    };
    const auto with = solve(true), without = solve(false);
    double sum = 0;
    for (const char* side : {"left", "right"})
        for (const char* end : {"front", "back"}) {
            const std::string rail = std::string(side) + " rail", leg = std::string(end) + " " + side;
            const Contact& contact = bench.contact(rail, leg);
            const std::size_t c = static_cast<std::size_t>(&contact - bench.layout.contacts.data());
            const ContactForce a = frame.contact_force(c, with), b = frame.contact_force(c, without);
            const kernel::Vec3 f = a.force - b.force;
            // About the middle line of the leg, where the moment is handed over.
            const MemberLine& post = frame.lines()[bench.copy(leg)];
            const kernel::Vec3 at(post.start.x(), post.start.y(), frame.contact_middle(c).z());
            sum += (a.moment - b.moment + (frame.contact_middle(c) - at).cross(f)).x();
        }
    return std::abs(sum) / (400 * 0.395);
}

} // namespace

TEST_CASE("The share of a push's moment on the joints of a chair's side rails", "[structure][published]")
{
    // Chairs of Scots pine pushed from front to back: front and back legs' joints with the side rails carry about 73 % of the total moment, by
    // frame analysis ("Effect of tenon size on static front to back loading performance of wooden chairs", abstract). Its frame is not given.
    const double plain = share_of_rails(*bench_of(chair(false))), stretched = share_of_rails(*bench_of(chair(true)));
    fmt::print("\n share of the moment on the joints of the side rails, front to back: published 0.73\n"
               "   computed, four rails at the seat and no stretchers     {:.2f}\n"
               "   computed, the same with a pair of stretchers low down  {:.2f}\n"
               " On feet that turn, rails alone must carry all of the moment but what the feet hold; any share below that is\n"
               " carried by stretchers or by the feet. The chair of the publication is not given: open.\n",
               plain, stretched);
    // Balance: without stretchers nothing but the feet, which hold little, can take any of it.
    CHECK(plain > 0.9);
    CHECK(plain < 1.0001);
    CHECK(stretched < plain);
    CHECK(stretched > 0.3);
}
