// One series of corners, one wood and one section: the ratios between its joints ask for no knowledge of how they stood in the press.

#include "catch.hpp"
#include "facts/shared_facts.hpp"
#include "places.hpp"

#include "bond/joints/joint_capacity.hpp"

#include <fmt/format.h>

#include <fstream>
#include <map>
#include <sstream>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

struct Corner {
    std::string joint, as, assumed, lacks;
    double load = 0; ///< lbf
};

std::vector<Corner> corners()
{
    std::ifstream file(data_folder() + "/../tests/published/data/corner_tests.csv");
    REQUIRE(file);
    std::vector<Corner> rows;
    bool head = true;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') continue;
        if (std::exchange(head, false)) continue;
        std::vector<std::string> f;
        std::istringstream in(line + ";");
        for (std::string field; std::getline(in, field, ';');) f.push_back(field);
        REQUIRE(f.size() >= 4);
        f.resize(5);
        rows.push_back({f[0], f[2], f[3], f[4], std::stod(f[1])});
    }
    return rows;
}

/// The sizes that the rows assume.
JointSizes tenon_of(double thickness)
{
    JointSizes s;
    s.rail_thickness = inches(0.75);
    s.rail_depth = inches(2.5);
    s.thickness = inches(thickness);
    s.width = inches(1.75);
    s.length = inches(1.5);
    return s;
}

JointCapacity cherry(JointForm form, const JointSizes& sizes)
{
    const WoodState wood = wood_state(shared_facts(), shared_facts().find_wood("black cherry"), {}, MoistureContent::percent(12));
    const auto c =
        joint_capacity(shared_facts(), form, sizes, {&wood, &wood, "cherry", "cherry", shared_facts().find_glue("PVA")});
    REQUIRE(c);
    return *c;
}

double of_wood(const char* name, JointForm form, const JointSizes& sizes)
{
    const WoodState wood = wood_state(shared_facts(), shared_facts().find_wood(name), {}, MoistureContent::percent(12));
    return joint_capacity(shared_facts(), form, sizes, {&wood, &wood, name, name, shared_facts().find_glue("PVA")})->mean.value();
}

JointCapacity computed(const std::string& as)
{
    JointSizes s = tenon_of(as == "thin tenon" ? 0.25 : 0.375);
    if (as == "tenon" || as == "thin tenon") return cherry(JointForm::tenon, s);
    if (as == "loose tenon") return cherry(JointForm::loose_tenon, s);
    if (as == "mitre") return cherry(JointForm::mitre, s);
    if (as == "pegged tenon") {
        s.pegs = {inches(0.25), 1, inches(0.1875)};
        return cherry(JointForm::tenon, s);
    }
    if (as == "lap") {
        s.width = s.length = s.rail_depth;
        return cherry(JointForm::lap, s);
    }
    if (as == "dowels") {
        s.diameter = inches(0.375);
        s.length = inches(2);
        s.count = 2;
        return cherry(JointForm::dowels, s);
    }
    throw std::logic_error("no computation of " + as);
}

} // namespace

TEST_CASE("Corners of one wood and one section: the ratios between the joints", "[joint][published]")
{
    const std::vector<Corner> rows = corners();
    REQUIRE(rows.size() == 13);
    const double tenon = computed("tenon").mean.value(), tenon_load = 1444;
    std::string table = "\n over the 3/8 in tenon: computed  measured  computed/measured\n";
    std::map<std::string, double> share;
    for (const Corner& row : rows) {
        CAPTURE(row.joint);
        if (row.as.empty()) {
            CHECK_FALSE(row.lacks.empty());
            continue;
        }
        CHECK_FALSE(row.assumed.empty());
        const double ratio = computed(row.as).mean.value() / tenon, measured = row.load / tenon_load;
        share[row.as] = ratio;
        table += fmt::format(" {:<40} {:>6.2f} {:>6.2f} {:>6.2f}\n", row.joint, ratio, measured, ratio / measured);
        // One section strength fitted to 18 corners lay between 0.86 and 1.43 of them: no ratio is allowed to promise more than that.
        CHECK(ratio / measured < 1.43);
        // A mitre is reckoned at little over half of what this one bore; nothing else lower.
        CHECK(ratio / measured > (row.as == "mitre" ? 0.5 : 0.7));
    }
    fmt::print("{}", table);
    REQUIRE(share.size() == 7);
    // The order of the list, as far as the sizes allow: a peg costs a fifth, a thinner tenon breaks itself sooner.
    CHECK(share["lap"] > share["pegged tenon"]);
    CHECK_THAT(share["pegged tenon"], WithinAbs(0.80, 0.005));
    CHECK(share["thin tenon"] < share["pegged tenon"]);
    CHECK(share["dowels"] < share["tenon"]);
    CHECK_THAT(share["loose tenon"], WithinAbs(0.97, 0.005));
}

TEST_CASE("Loose tenons lie between dowels and tenons cut on the rail, in three woods", "[joint][published]")
{
    // Aman, West and Cormier, 2008 (abstract, Forest Products Journal 58(3):61): dowel < loose tenon < integral; woods and sizes are not told there.
    // Assumed: three woods of our own, the section and the tenon of the corners above, two dowels of 3/8 in, 2 in long.
    JointSizes dowels = tenon_of(0.375);
    dowels.diameter = inches(0.375);
    dowels.length = inches(2);
    dowels.count = 2;
    for (const char* name : {"sugar maple", "red oak", "yellow-poplar"}) {
        CAPTURE(name);
        const double integral = of_wood(name, JointForm::tenon, tenon_of(0.375)),
                     loose = of_wood(name, JointForm::loose_tenon, tenon_of(0.375));
        CHECK(of_wood(name, JointForm::dowels, dowels) < loose);
        CHECK(loose < integral);
    }
}

TEST_CASE("A thinner tenon loses strength, less steeply than measured where its glue line governs", "[joint][published]")
{
    // Loads over that of 3/8 in, computed in the reference from the list: 1/4 in 0.50, 5/16 in 0.68.
    const double whole = cherry(JointForm::tenon, tenon_of(0.375)).mean.value();
    const double quarter = cherry(JointForm::tenon, tenon_of(0.25)).mean.value() / whole,
                 five = cherry(JointForm::tenon, tenon_of(0.3125)).mean.value() / whole;
    fmt::print(" tenon of 1/4 in over 3/8 in: computed {:.2f}, measured 0.50; 5/16 in: {:.2f}, 0.68\n", quarter, five);
    CHECK(quarter < five);
    CHECK(five < 1);
    CHECK(quarter / 0.50 < 1.43); // as the other ratios of the list
    CHECK(five / 0.68 < 1.43);
}

TEST_CASE("A tenon a tenth of a millimetre tight is never weaker than one with room, and room costs", "[joint][published]")
{
    // Liu and others, 2024 (abstract, Forests 15:1612): white oak, best of nine at 40 × 35 mm and 0.1 mm tight; clearance second to length for strength.
    JointSizes s = tenon_of(0.375);
    s.width = millimetres(40);
    s.length = millimetres(35);
    double before = 1e9;
    for (const double clearance : {-0.1, 0.0, 0.2, 0.5}) {
        CAPTURE(clearance);
        s.clearance = millimetres(clearance);
        const double moment = of_wood("white oak", JointForm::tenon, s);
        CHECK(moment <= before);
        before = moment;
    }
    s.clearance = millimetres(-0.1);
    const double tight = of_wood("white oak", JointForm::tenon, s);
    s.length = millimetres(28);
    CHECK(of_wood("white oak", JointForm::tenon, s) < tight);
}

TEST_CASE("Joints other than tenons are reckoned as low as corners with plates scatter", "[joint][published]")
{
    // Plate joint test (abstract 3 of a public archive): fourteen single corners from 593 to 1,685 N, about 20 % from sample to sample, each split inward
    // from its end grain; sizes are not told, so that the loads themselves are compared with nothing. One in twenty lies under 1 - 1.645 × 0.20 of the mean.
    CHECK(shared_facts().number("joint_lower_share_other").value <= 1 - 1.645 * 0.20 + 0.005);
}

TEST_CASE("The tenons of that series break themselves, and the load tells of a corner between the two ways to stand it",
          "[joint][published]")
{
    // 389 N m if it stood on both ends, 779 N m if squeezed along the line of its ends.
    const JointCapacity c = computed("tenon");
    CHECK_THAT(c.governs, ContainsSubstring("own section"));
    CHECK(c.mean.value() < 389);
    CHECK(c.mean.value() > 0.86 * 389); // the least of the fit
}

TEST_CASE("Beech tees: a tenon over dowels", "[joint][published]")
{
    // 204 over 154 N m, Uysal 2024 (abstract), sizes not told; assumed those of the red oak tees, and two dowels of 9.5 × 50 mm.
    const WoodState wood =
        wood_state(shared_facts(), shared_facts().find_wood("American beech"), {}, MoistureContent::percent(12));
    JointSizes s;
    s.rail_thickness = millimetres(22.2);
    s.rail_depth = millimetres(63.5);
    s.thickness = millimetres(9.5);
    s.width = millimetres(38);
    s.length = millimetres(32);
    const JointWoods woods{&wood, &wood, "beech", "beech", shared_facts().find_glue("PVA")};
    const double tenon = joint_capacity(shared_facts(), JointForm::tenon, s, woods)->mean.value();
    s.diameter = millimetres(9.5);
    s.length = millimetres(50);
    s.count = 2;
    const double dowels = joint_capacity(shared_facts(), JointForm::dowels, s, woods)->mean.value();
    fmt::print(" beech tee, tenon over dowels: computed {:.2f}, measured {:.2f}\n", tenon / dowels, 204.0 / 154);
    CHECK(tenon / dowels > 1);
    CHECK(tenon / dowels < 2.5);
}
