#include "catch.hpp"
#include "checks/checked.hpp"

#include "review/content/left_out.hpp"

using namespace jointwright;

TEST_CASE("The points that a check leaves out are read from its text", "[checks][left-out]")
{
    const std::vector<std::string> points =
        points_left_out("# sag: bends\n\n## Why\n\n* not this\n\n## What it leaves out\n\n* One thing,\n"
                        "told over two lines.\n* Another: see `jointwright checks tip`.\n\nA paragraph\n"
                        "behind `them`.\n\n## Sources\n\n* nor this\n");
    REQUIRE(points.size() == 3);
    CHECK(points[0] == "One thing, told over two lines.");
    CHECK(points[1] == "Another: see tip.");
    CHECK(points[2] == "A paragraph behind them.");
    CHECK(points_left_out("# nothing\n").empty());
}

TEST_CASE("Every check that has a finding says what it leaves out, once", "[checks][left-out]")
{
    for (const CheckInfo& check : all_checks()) {
        CAPTURE(check.id);
        Finding f;
        f.check = check.id;
        const std::vector<LeftOut> left_out = left_out_by(testing::shared_facts(), {f, f});
        REQUIRE(left_out.size() == 1);
        for (const std::string& point : left_out[0].points) {
            CHECK(point.size() > 10);
            CHECK(point.find('`') == std::string::npos);
        }
    }
    Finding unknown;
    unknown.check = "no-such-check";
    CHECK(left_out_by(testing::shared_facts(), {unknown}).empty());
}
