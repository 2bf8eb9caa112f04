#include "catch.hpp"

#include "piece/model/part_name.hpp"
#include "piece/model/space.hpp"

using namespace jointwright;

TEST_CASE("Every side and axis is found by its name and nothing else is", "[space]")
{
    for (const Side side : {Side::left, Side::right, Side::front, Side::back, Side::bottom, Side::top})
        CHECK(side_named(name_of(side)) == side);
    for (const Axis axis : {Axis::x, Axis::y, Axis::z}) CHECK(axis_named(name_of(axis)) == axis);
    CHECK_FALSE(side_named("Left"));
    CHECK_FALSE(axis_named("xy"));
}

TEST_CASE("Right, back and top lie at the far end of x, y and z", "[space]")
{
    CHECK((axis_of(Side::left) == Axis::x && axis_of(Side::right) == Axis::x));
    CHECK((axis_of(Side::front) == Axis::y && axis_of(Side::back) == Axis::y));
    CHECK((axis_of(Side::bottom) == Axis::z && axis_of(Side::top) == Axis::z));
    CHECK((is_far(Side::right) && is_far(Side::back) && is_far(Side::top)));
    CHECK_FALSE((is_far(Side::left) || is_far(Side::front) || is_far(Side::bottom)));
}

TEST_CASE("The third axis is neither of two", "[space]")
{
    CHECK(third_axis(Axis::x, Axis::y) == Axis::z);
    CHECK(third_axis(Axis::z, Axis::x) == Axis::y);
    CHECK(third_axis(Axis::y, Axis::z) == Axis::x);
}

TEST_CASE("A part name may carry the number of a copy", "[space]")
{
    CHECK(part_name("long rail").id == "long rail");
    CHECK_FALSE(part_name("long rail").number);
    CHECK(part_name("slat #3").id == "slat");
    CHECK(part_name("slat #3").number == 3);
    CHECK(part_name("slat#12").text() == "slat #12");
    for (const char* bad : {"slat #", "slat #x", "slat #-1", "slat #3x", "slat #1.5", "slat #99999999999"})
        CHECK(part_name(bad).number == 0);
}
