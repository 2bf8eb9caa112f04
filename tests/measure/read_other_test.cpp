#include "catch.hpp"
#include "measure/read.hpp"

#include <string>
#include <utility>
#include <vector>

using namespace jointwright;

namespace {

template <class T>
Misreading refused(const Outcome<T>& outcome)
{
    if (outcome) FAIL("was read");
    return outcome.why();
}

template <class T>
double si_value(const Outcome<T>& outcome)
{
    if (!outcome) FAIL(outcome.why().says);
    return outcome->value();
}

} // namespace

TEST_CASE("Forces are read", "[measure][read]")
{
    CHECK(si_value(read_force("800 N")) == 800);
    CHECK(si_value(read_force("1.2 kN")) == 1200);
    CHECK(si_value(read_force("-50n")) == -50);
    // The pound-force is exactly 4.4482216152605 N: 0.45359237 kg times 9.80665 m/s².
    CHECK_THAT(si_value(read_force("180 lbf")), WithinRel(180 * 0.45359237 * 9.80665, 1e-14));

    const Misreading mass = refused(read_force("80 kg"));
    CHECK(mass.id == "wrong-unit");
    CHECK_THAT(mass.says, ContainsSubstring("\"80 kg\" is a mass, but a force is wanted here"));
    CHECK(mass.fix == "784.5 N");
    CHECK(refused(read_force("180 lb")).fix == "180 lbf");
    CHECK(refused(read_force("800")).id == "wrong-unit");
    CHECK(refused(read_force("800")).fix == "800 N");
    CHECK(refused(read_force("800 N/m")).id == "wrong-unit");
    CHECK(refused(read_force("800 mN")).id == "wrong-unit");
    CHECK(refused(read_force("1e308 kN")).id == "out-of-range");
    CHECK(refused(read_force("800 N down")).id == "wrong-type");
}

TEST_CASE("Forces per length are read", "[measure][read]")
{
    CHECK(si_value(read_line_load("1500 N/m")) == 1500);
    CHECK(si_value(read_line_load("1.5 kN / m")) == 1500);
    CHECK_THAT(si_value(read_line_load("25 lbf/ft")), WithinRel(25 * 4.4482216152605 / 0.3048, 1e-14));
    CHECK_THAT(si_value(read_line_load("2 lbf/in")), WithinRel(2 * 4.4482216152605 / 0.0254, 1e-14));
    CHECK(refused(read_line_load("25 lb/ft")).fix == "25 lbf/ft");
    CHECK(refused(read_line_load("25 lbf")).id == "wrong-unit");
}

TEST_CASE("Masses and densities are read", "[measure][read]")
{
    CHECK(si_value(read_mass("80 kg")) == 80);
    CHECK(si_value(read_mass("500g")) == 0.5);
    CHECK_THAT(si_value(read_mass("176 lb")), WithinRel(176 * 0.45359237, 1e-14));
    CHECK_THAT(si_value(read_mass("12 1/2 lbs")), WithinRel(12.5 * 0.45359237, 1e-14));
    CHECK(refused(read_mass("80 lbf")).fix == "80 lb");
    CHECK(refused(read_mass("80 mm")).id == "wrong-unit");
    CHECK(refused(read_mass("80,5 kg")).fix == "80.5 kg");

    CHECK(si_value(read_density("680 kg/m3")) == 680);
    CHECK(si_value(read_density("680 kg/m³")) == 680);
    CHECK(si_value(read_density("680 kg/m^3")) == 680);
    CHECK_THAT(si_value(read_density("0.68 g/cm3")), WithinRel(680.0, 1e-14));
    CHECK_THAT(si_value(read_density("42 lb/ft3")), WithinRel(42 * 0.45359237 / (0.3048 * 0.3048 * 0.3048), 1e-14));
    CHECK(refused(read_density("0.68")).id == "wrong-unit");
}

TEST_CASE("Stresses are read", "[measure][read]")
{
    CHECK_THAT(si_value(read_stress("12.5 GPa")), WithinRel(12.5e9, 1e-14));
    CHECK_THAT(si_value(read_stress("95 MPa")), WithinRel(95e6, 1e-14));
    CHECK_THAT(si_value(read_stress("95 N/mm2")), WithinRel(95e6, 1e-14));
    CHECK_THAT(si_value(read_stress("95 N/mm²")), WithinRel(95e6, 1e-14));
    CHECK(si_value(read_stress("250 Pa")) == 250);
    // 1 psi = 1 lbf over (0.0254 m)².
    CHECK_THAT(si_value(read_stress("1.8e6 psi")), WithinRel(1.8e6 * 4.4482216152605 / (0.0254 * 0.0254), 1e-12));
    CHECK_THAT(si_value(read_stress("1.8 Mpsi")), WithinRel(si_value(read_stress("1800 ksi")), 1e-14));
    CHECK(si_value(read_stress("9 MPA")) == 9e6);

    const Misreading milli = refused(read_stress("9 mPa"));
    CHECK(milli.id == "wrong-unit");
    CHECK(milli.fix == "9 MPa");
    CHECK(refused(read_stress("1.8 mpsi")).fix == "1.8 Mpsi");
    CHECK(refused(read_stress("95 N")).id == "wrong-unit");
}

TEST_CASE("Temperatures are read", "[measure][read]")
{
    for (const char* const text : {"20C", "20 C", "20 °C", "20°C", "20 ° C", "20 ℃", "20 ºC", "68F", "68 °F", "68 f", "68℉"}) {
        CAPTURE(text);
        const auto temperature = read_temperature(text);
        REQUIRE(temperature);
        CHECK_THAT(temperature->celsius(), WithinAbs(20, 1e-12));
    }
    CHECK_THAT(read_temperature("-40 F")->celsius(), WithinAbs(-40, 1e-12));
    CHECK(refused(read_temperature("20")).id == "wrong-unit");
    CHECK(refused(read_temperature("20°")).id == "wrong-unit");
    CHECK(refused(read_temperature("20 C 5")).id == "wrong-type");
    CHECK(refused(read_temperature("20,5 C")).fix == "20.5 C");
}

TEST_CASE("Percentages, angles and plain numbers may stand bare", "[measure][read]")
{
    for (const char* const text : {"8.5", "8.5%", "8.5 %", "8 1/2 %", "8.5 percent"}) {
        CAPTURE(text);
        const auto percent = read_percent(text);
        REQUIRE(percent);
        CHECK(*percent == 8.5);
    }
    for (const char* const text : {"30", "30 deg", "30°", "30 degrees"}) {
        CAPTURE(text);
        CHECK_THAT(si_value(read_angle(text)), WithinRel(0.52359877559829887, 1e-15));
    }
    CHECK(*read_number("12.5") == 12.5);
    CHECK(*read_number("-1.8e6") == -1.8e6);

    CHECK(refused(read_percent("8 in")).id == "wrong-unit");
    CHECK(refused(read_percent("8,5 %")).fix == "8.5 %");
    CHECK(refused(read_percent("nan")).id == "out-of-range");
    CHECK(refused(read_angle("30 %")).id == "wrong-unit");
    CHECK(refused(read_angle("30 deg rift")).id == "wrong-type");
    CHECK(refused(read_number("8 %")).fix == "8");
    CHECK(refused(read_number("8 mm")).id == "wrong-unit");
    CHECK(refused(read_number("8,5")).fix == "8.5");
    CHECK(refused(read_number("inf")).id == "out-of-range");
    CHECK(refused(read_number("1e400")).id == "out-of-range");
    CHECK(refused(read_number("eight")).id == "wrong-type");
    CHECK(refused(read_number("")).id == "wrong-type");
    CHECK(refused(read_number("8 ?")).id == "wrong-type");
}
