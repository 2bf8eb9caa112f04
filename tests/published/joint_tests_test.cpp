// Computed against measured: every published joint test that tells enough to compute it. Nothing here was fitted to these rows but what the
// source itself gives (the factor 0.8 of the published tenon expression, the share 0.75 from a mean to a lower strength).

#include "catch.hpp"
#include "facts/shared_facts.hpp"
#include "places.hpp"

#include "bond/joints/joint_capacity.hpp"
#include "wood/moisture_balance.hpp"

#include <boost/math/statistics/univariate_statistics.hpp>
#include <fmt/format.h>

#include <fstream>
#include <map>
#include <numbers>
#include <sstream>

using namespace jointwright;
using namespace jointwright::testing;

namespace {

using MeasuredRow = std::map<std::string, std::string>;

std::vector<MeasuredRow> measured_rows()
{
    std::ifstream file(jointwright::testing::data_folder() + "/../tests/published/data/joint_tests.csv");
    REQUIRE(file);
    std::vector<MeasuredRow> rows;
    std::vector<std::string> heads;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') continue;
        std::vector<std::string> fields;
        std::istringstream in(line + ";");
        for (std::string field; std::getline(in, field, ';');) fields.push_back(field);
        if (heads.empty()) {
            heads = fields;
            continue;
        }
        REQUIRE(fields.size() == heads.size());
        MeasuredRow row;
        for (std::size_t i = 0; i < heads.size(); ++i) row[heads[i]] = fields[i];
        rows.push_back(std::move(row));
    }
    return rows;
}

double number_of(const MeasuredRow& row, const char* key) { return std::stod(row.at(key)); }

JointCapacity tested_joint(const MeasuredRow& row)
{
    const WoodState wood =
        wood_state(shared_facts(), shared_facts().find_wood(row.at("species")), {}, MoistureContent::percent(12));
    JointSizes s;
    s.rail_thickness = millimetres(number_of(row, "rail_thickness_mm"));
    s.rail_depth = millimetres(number_of(row, "rail_depth_mm"));
    s.thickness = millimetres(number_of(row, "tenon_thickness_mm"));
    s.width = millimetres(number_of(row, "tenon_width_mm"));
    s.length = millimetres(number_of(row, "tenon_length_mm"));
    return *joint_capacity(shared_facts(), JointForm::tenon, s,
                           {&wood, &wood, row.at("species"), row.at("species"), shared_facts().find_glue("PVA")});
}

/// Mean shear on a dowel's surface in MPa, beech drawn from side grain, the wood at equilibrium with air of that humidity at 20 °C.
double dowel_surface(double humidity)
{
    const MoistureContent moisture = equilibrium_moisture(RelativeHumidity::percent(humidity), Temperature::celsius(20));
    const WoodState beech = wood_state(shared_facts(), shared_facts().find_wood("American beech"), {}, moisture);
    JointSizes s;
    s.rail_thickness = millimetres(24);
    s.rail_depth = millimetres(60);
    s.diameter = millimetres(8);
    s.length = millimetres(50); // the depth is not told; the glue line does not ask for it
    s.count = 1;
    const auto c =
        joint_capacity(shared_facts(), JointForm::dowels, s, {&beech, &beech, "beech", "beech", shared_facts().find_glue("PVA")});
    return c->withdrawal.value() / (std::numbers::pi * 0.008 * 0.025) * 1e-6;
}

/// Moment of a loose tenon with polyurethane over that with PVA, in percent above 100.
double gain_of_polyurethane()
{
    const WoodState beech =
        wood_state(shared_facts(), shared_facts().find_wood("American beech"), {}, MoistureContent::percent(12));
    JointSizes s;
    s.rail_thickness = millimetres(24);
    s.rail_depth = millimetres(60);
    s.thickness = millimetres(8);
    s.width = millimetres(40);
    s.length = millimetres(30);
    const GlueRecord* polyurethane = shared_facts().find_glue("polyurethane");
    REQUIRE(polyurethane);
    const auto mean = [&](const GlueRecord* glue) {
        return joint_capacity(shared_facts(), JointForm::loose_tenon, s, {&beech, &beech, "beech", "beech", glue})->mean.value();
    };
    return 100 * mean(polyurethane) / mean(shared_facts().find_glue("PVA"));
}

struct Compared {
    std::string id, what;
    double computed = 0, measured = 0;
    std::string why;
};

Compared compared(const MeasuredRow& row)
{
    const std::string id = row.at("id"), used = row.at("used");
    const double measured = number_of(row, "measured");
    if (id == "1")
        return {id, "red oak tenon, mean moment, N m", tested_joint(row).mean.value(), measured,
                "crossed glue is taken at a third of the wood's shear; 5 MPa instead of 4.1 would meet it"};
    if (id == "6")
        return {id, "the same, lower moment, N m", tested_joint(row).lower.value(), measured,
                "the deviation of row 1: both carry the share 0.75"};
    if (id == "34")
        return {id, "dowel, 25 % humidity, surface shear, MPa", dowel_surface(25), measured,
                "highest mean of several kinds: a spiral dowel keys into the wood; the 5 MPa of usual dowels at 12 % count"};
    if (id == "35")
        return {id, "dowel, 85 % humidity, surface shear, MPa", dowel_surface(85), measured,
                "lowest mean; PVA softens in damp air, which no published factor for glue lines covers: open"};
    if (id == "51")
        return {id, "polyurethane over PVA, loose tenon, %", gain_of_polyurethane(), 100 + measured,
                "crossed wood decides for both glues: no difference is computed"};
    throw std::logic_error("no computation for row " + id + " (" + used + ")");
}

} // namespace

TEST_CASE("Measured joints against computed ones", "[joint][published]")
{
    std::vector<double> ratios;
    std::string table = "\n row  computed  measured  ratio  what; why it differs\n";
    std::string open;
    for (const MeasuredRow& row : measured_rows()) {
        CAPTURE(row.at("id"));
        CHECK_FALSE(row.at("source").empty());
        if (row.at("used").empty()) {
            CHECK_FALSE(row.at("lacks").empty());
            open += fmt::format(" {:>3}  {}: {}\n", row.at("id"), row.at("joint"), row.at("lacks"));
            continue;
        }
        const Compared c = compared(row);
        ratios.push_back(c.computed / c.measured);
        table += fmt::format(" {:>3}  {:>8.1f}  {:>8.1f}  {:>5.2f}  {}; {}\n", c.id, c.computed, c.measured,
                             c.computed / c.measured, c.what, c.why);
    }
    REQUIRE(ratios.size() == 5);
    const double mean = boost::math::statistics::mean(ratios),
                 scatter = std::sqrt(boost::math::statistics::sample_variance(ratios));
    fmt::print("{} mean of the ratios {:.2f}, standard deviation {:.2f}\n not computed:\n{}", table, mean, scatter, open);
    // On the safe side as a whole, and not by so much that the numbers say nothing.
    CHECK(mean < 1.15);
    CHECK(mean > 0.5);
}

TEST_CASE("The 215 red oak joints: within two standard deviations of the mean, and the lower value on the safe side",
          "[joint][published]")
{
    for (const MeasuredRow& row : measured_rows()) {
        if (row.at("id") == "1")
            CHECK(std::abs(tested_joint(row).mean.value() - number_of(row, "measured")) < 2 * number_of(row, "sd"));
        if (row.at("id") == "6") CHECK(tested_joint(row).lower.value() < number_of(row, "measured"));
        // Erdil's expression with the factor that this series itself gives lands on its mean.
        if (row.at("id") == "1")
            CHECK_THAT(tested_joint(row).published->value() / number_of(row, "measured"), WithinAbs(1.0, 0.02));
        // The elastic corner stress would condemn every chair: a quarter of what was measured.
        if (row.at("id") == "1")
            CHECK_THAT(tested_joint(row).corner.value() / number_of(row, "measured"), WithinAbs(0.23, 0.005));
        if (row.at("id") == "1") CHECK_THAT(tested_joint(row).twist.value() / number_of(row, "measured"), WithinAbs(0.38, 0.005));
        if (row.at("id") == "1")
            CHECK_THAT(tested_joint(row).glue_line.value() / number_of(row, "measured"), WithinAbs(0.80, 0.008));
    }
}

TEST_CASE("Least mean shear that EN 204 asks of PVA on beech, dry", "[joint][published]")
{
    // 10 MPa after seven days in a standard climate for D1 to D4 (from memory).
    for (const char* glue : {"PVA", "cross-linked PVA, D3", "two-part PVA, D4"}) {
        CAPTURE(glue);
        const GlueRecord* record = shared_facts().find_glue(glue);
        REQUIRE(record);
        REQUIRE(record->shear);
        CHECK_THAT(in_megapascals(record->shear->value), WithinAbs(10, 0.5));
    }
}

TEST_CASE("Scarfs and fingers by the shear on their flanks against chapter 10", "[joint][published]")
{
    // Wood Handbook ch. 10 (from memory): scarfs of 1 in 12 reach 85 to 90 % of solid wood in tension, of 1 in 8 about 80 %; fingers at best 75 %.
    // Flanks of 1 in 12 in red oak: 12.3 MPa × 12 = 148 MPa, more than its bending strength of 99: the flanks do not limit it, and the
    // published share is the lower of the two opinions, as it must be.
    const WoodState oak = wood_state(shared_facts(), shared_facts().find_wood("red oak"), {}, MoistureContent::percent(12));
    GlueRecord strong = *shared_facts().find_glue("PVA");
    strong.shear.reset();
    JointSizes s;
    s.rail_thickness = millimetres(20);
    s.rail_depth = millimetres(60);
    s.length = millimetres(6); // two flanks over a pitch of 1: a slope of 1 in 12
    s.width = millimetres(1);
    const auto c = joint_capacity(shared_facts(), JointForm::finger, s, {&oak, &oak, "red oak", "red oak", &strong});
    const double solid = 99e6 * 0.020 * 0.060 * 0.060 / 6;
    CHECK_THAT(c->glue_line.value() / solid, WithinRel(1.0, 1e-9));
    REQUIRE(c->published);
    CHECK_THAT(c->published->value() / solid, WithinAbs(0.41, 0.005)); // lowest published mean
    CHECK(c->mean == *c->published);
    s.length = millimetres(2); // 1 in 4: 4 × 12.3 = 49 MPa, half of solid, and then the flanks are near the published 0.41
    const auto steep = joint_capacity(shared_facts(), JointForm::finger, s, {&oak, &oak, "red oak", "red oak", &strong});
    CHECK_THAT(steep->glue_line.value() / solid, WithinAbs(4 * 12.3 / 99, 1e-6));
}
