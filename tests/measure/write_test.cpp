#include "catch.hpp"
#include "measure/write.hpp"

#include <cmath>
#include <limits>
#include <random>
#include <string>

using namespace jointwright;

TEST_CASE("Inches are written to the nearest 1/64, reduced", "[measure][write]")
{
    const auto written = [](double number) { return write_length(inches(number), LengthUnit::inch); };
    CHECK(written(17.125) == "17 1/8 in");
    CHECK(written(0.375) == "3/8 in");
    CHECK(written(0) == "0 in");
    CHECK(written(-0.0) == "0 in");
    CHECK(written(-0.001) == "0 in");
    CHECK(written(-0.125) == "-1/8 in");
    CHECK(written(-12.5) == "-12 1/2 in");
    CHECK(written(12) == "12 in");
    CHECK(written(1.0 / 64) == "1/64 in");
    CHECK(written(0.996) == "1 in");
    CHECK(written(11.9999) == "12 in");
    CHECK(written(3 + 63.0 / 64) == "3 63/64 in");
    CHECK(written(1e15) == "1e15 in");
}

TEST_CASE("Metric lengths are written to 0.1 mm without idle zeros", "[measure][write]")
{
    CHECK(write_length(millimetres(434.86), LengthUnit::millimetre) == "434.9 mm");
    CHECK(write_length(millimetres(305), LengthUnit::millimetre) == "305 mm");
    CHECK(write_length(millimetres(-0.04), LengthUnit::millimetre) == "0 mm");
    CHECK(write_length(millimetres(100), LengthUnit::millimetre) == "100 mm");
    CHECK(write_length(millimetres(434.86), LengthUnit::centimetre) == "43.49 cm");
    CHECK(write_length(millimetres(300), LengthUnit::centimetre) == "30 cm");
}

TEST_CASE("Small lengths are written finer", "[measure][write]")
{
    CHECK(write_small_length(millimetres(0.5588), LengthUnit::inch) == "0.022 in");
    CHECK(write_small_length(millimetres(0.5588), LengthUnit::millimetre) == "0.56 mm");
    CHECK(write_small_length(millimetres(0.5588), LengthUnit::centimetre) == "0.056 cm");
    CHECK(write_small_length(millimetres(-0.001), LengthUnit::millimetre) == "0 mm");
    CHECK(write_small_length(millimetres(-1.5), LengthUnit::millimetre) == "-1.5 mm");
}

TEST_CASE("What is written is read back within half a step", "[measure][write][read]")
{
    std::mt19937 random(11);
    std::uniform_real_distribution<double> millimetre(-3000, 3000);
    const auto back = [](const std::string& text) {
        const auto length = read_length(text);
        if (!length) FAIL(text + ": " + length.why().says);
        return in_millimetres(*length);
    };
    constexpr double kRounding = 1e-9; // millimetres
    for (int i = 0; i < 2000; ++i) {
        const double mm = millimetre(random) / (i % 2 == 0 ? 1 : 100);
        CAPTURE(mm);
        CHECK_THAT(back(write_length(millimetres(mm), LengthUnit::inch)), WithinAbs(mm, 25.4 / 128 + kRounding));
        CHECK_THAT(back(write_length(millimetres(mm), LengthUnit::millimetre)), WithinAbs(mm, 0.05 + kRounding));
        CHECK_THAT(back(write_length(millimetres(mm), LengthUnit::centimetre)), WithinAbs(mm, 0.05 + kRounding));
        CHECK_THAT(back(write_small_length(millimetres(mm), LengthUnit::inch)), WithinAbs(mm, 0.0127 + kRounding));
        CHECK_THAT(back(write_small_length(millimetres(mm), LengthUnit::millimetre)), WithinAbs(mm, 0.005 + kRounding));
    }
}

TEST_CASE("Every 64th of an inch is written and read back as itself", "[measure][write][read]")
{
    for (int parts = -130; parts <= 130; ++parts) {
        const std::string text = write_length(inches(parts / 64.0), LengthUnit::inch);
        CAPTURE(parts, text);
        CHECK_THAT(in_inches(*read_length(text)), WithinAbs(parts / 64.0, 1e-12));
    }
}

TEST_CASE("Milling steps round up and stay where they are", "[measure][write]")
{
    CHECK(write_length_up(inches(0.5), LengthUnit::inch) == "1/2 in");
    CHECK(write_length_up(inches(0.501), LengthUnit::inch) == "17/32 in");
    CHECK(write_length_up(millimetres(12.1), LengthUnit::millimetre) == "12.5 mm");
    CHECK(write_length_up(millimetres(12.5), LengthUnit::millimetre) == "12.5 mm");
    CHECK(write_length_up(millimetres(12.1), LengthUnit::centimetre) == "1.25 cm");
    CHECK(write_length_up(millimetres(0), LengthUnit::millimetre) == "0 mm");
    CHECK(write_length_up(millimetres(-0.2), LengthUnit::millimetre) == "0 mm");
    for (int i = 1; i < 4000; ++i) {
        const Length thirty_seconds = inches(i / 32.0), halves = millimetres(i * 0.5);
        CHECK_THAT(in_inches(round_up_to_milling_step(thirty_seconds, LengthUnit::inch)), WithinAbs(i / 32.0, 1e-9));
        CHECK_THAT(in_millimetres(round_up_to_milling_step(halves, LengthUnit::millimetre)), WithinAbs(i * 0.5, 1e-9));
        CHECK(round_up_to_milling_step(halves + millimetres(0.01), LengthUnit::millimetre) > halves + millimetres(0.4));
    }
}

TEST_CASE("Plain numbers have so many digits and no exponent for everyday sizes", "[measure][write]")
{
    CHECK(write_number(0.004123) == "0.00412");
    CHECK(write_number(12.34) == "12.3");
    CHECK(write_number(1183) == "1180");
    CHECK(write_number(12.0) == "12");
    CHECK(write_number(0) == "0");
    CHECK(write_number(-0.0) == "0");
    CHECK(write_number(-2.5) == "-2.5");
    CHECK(write_number(999.6) == "1000");
    CHECK(write_number(0.9996) == "1");
    CHECK(write_number(1.8e6, 2) == "1800000");
    CHECK(write_number(3.14159, 5) == "3.1416");
    CHECK(write_number(1.5e20) == "1.5e20");
    CHECK(write_number(1.5e-10) == "1.5e-10");
    CHECK(write_number(-1.5e-12) == "0"); // what is left where a sum cancels
    CHECK(write_number(7, 0) == "7");
    CHECK(write_number(std::numeric_limits<double>::infinity()) == "infinite");
    CHECK(write_number(std::nan("")) == "not a number");
}

TEST_CASE("Quantities are written with their unit", "[measure][write]")
{
    CHECK(write_stress(megapascals(9.1)) == "9.1 MPa");
    CHECK(write_stress(gigapascals(12.5)) == "12.5 GPa");
    CHECK(write_stress(pascals(4321)) == "0.00432 MPa");
    CHECK(write_stress(pascals(-5.1e-15)) == "0 MPa");
    CHECK(write_force(newtons(1180), LengthUnit::millimetre) == "1180 N");
    CHECK(write_force(newtons(1180), LengthUnit::inch) == "1180 N (265 lbf)");
    CHECK(write_mass(kilograms(12.3), LengthUnit::centimetre) == "12.3 kg");
    CHECK(write_mass(kilograms(12.3), LengthUnit::inch) == "12.3 kg (27 lb)");
    CHECK(write_mass(kilograms(80), LengthUnit::inch) == "80 kg (176 lb)");
    CHECK(write_percent(8) == "8 %");
    CHECK(write_percent(5.44) == "5.4 %");
    CHECK(write_moisture(MoistureContent::percent(5.4)) == "5.4 %");
    CHECK(write_angle(degrees(45)) == "45°");
    CHECK(write_angle(degrees(22.5)) == "22.5°");
    CHECK(write_area(square_metres(4.129e-4), LengthUnit::millimetre) == "4.1 cm²");
    CHECK(write_area(square_metres(4.129e-4), LengthUnit::inch) == "0.64 in²");
    CHECK(write_area(square_metres(0.12345), LengthUnit::centimetre) == "1230 cm²");
}
