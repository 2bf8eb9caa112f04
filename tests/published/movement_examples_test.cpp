// Worked examples of movement that are printed somewhere.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "wood/movement.hpp"

using namespace jointwright;
using namespace jointwright::testing;

namespace {

MoistureContent pct(double p) { return MoistureContent::percent(p); }

MovementLaw law_of(const char* name)
{
    const auto law = movement_law(shared_facts(), shared_facts().find_wood(name));
    return std::get<MovementLaw>(law);
}

} // namespace

TEST_CASE("The handbook's white fir board, 8 to 11 %", "[movement][published]")
{
    // Wood Handbook, FPL-GTR-190 (2010), p. 13-17, after eq. 13-2: a flat-sawn board 232 mm (9.15 in) wide comes to 233.7 mm
    // (9.217 in). The species, the 8 % and C_T 0.00245 are from memory, sizes, changes and C_R are retrieved.
    const MovementLaw law = law_of("white fir");
    CHECK_THAT(law.tangential.per_point(), WithinAbs(0.00245, 0.000005));
    CHECK_THAT(law.radial.per_point(), WithinAbs(0.00112, 0.000005));
    const double strain = board_strain(law, degrees(0), pct(8), pct(11)).width;
    CHECK_THAT(232 * strain, WithinAbs(1.7, 0.05));
    CHECK_THAT(232 * (1 + strain), WithinAbs(233.7, 0.05));
    CHECK_THAT(9.15 * strain, WithinAbs(0.067, 0.0005));
    CHECK_THAT(9.15 * (1 + strain), WithinAbs(9.217, 0.0005));
}

TEST_CASE("The same board by the wider law", "[movement][published]")
{
    // Eq. 13-3 with the listed shrinkage 7.0 % gives 1.712 mm (worked out). The program's law fits the shrinkage to the
    // coefficient instead; from 8 to 14.0001 % it must stay within the rounding of that shrinkage (6.95 to 7.05).
    const MovementLaw law = law_of("white fir");
    const auto listed = [](double s, double m0, double m1) { return (m1 - m0) / (3000 / s - 30 + m0); };
    CHECK_THAT(232 * listed(7.0, 8, 11), WithinAbs(1.712, 0.0005));
    const double strain = board_strain(law, degrees(0), pct(8), pct(14.0001)).width;
    CHECK(strain >= listed(6.95, 8, 14.0001));
    CHECK(strain <= listed(7.05, 8, 14.0001));
}

TEST_CASE("Flooring pages: a board 5 in wide, 6 to 9 %", "[movement][published]")
{
    // Pages of the flooring industry that cite the Wood Handbook, in inches to three decimals.
    struct Row {
        const char* wood;
        double coefficient, change_in;
    };
    for (const Row& row : {Row{"white oak", 0.00365, 0.055}, Row{"red oak", 0.00369, 0.055}, Row{"mesquite", 0.00129, 0.019}}) {
        CAPTURE(row.wood);
        const WoodRecord* wood = shared_facts().find_wood(row.wood);
        REQUIRE(wood != nullptr);
        REQUIRE(wood->tangential);
        CHECK_THAT(wood->tangential->value.per_point(), WithinAbs(row.coefficient, 0.000005));
        CHECK_THAT(5 * movement_strain(wood->tangential->value, pct(30), pct(6), pct(9)), WithinAbs(row.change_in, 0.0005));
    }
}
