#include "catch.hpp"
#include "checks/checked.hpp"
#include "report/path_points.hpp"

#include "report/charts/chart_months.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;

namespace {

/// The porch bench, in a room of data/rooms.toml.
ReportContent porch_in(const std::string& room)
{
    std::string text = checked::built_in_design("porch-slats-too-close");
    const std::size_t from = text.find("air = \""), to = text.find('\n', from);
    text.replace(from, to - from, "air = \"" + room + "\"");
    CheckOptions options;
    options.drawn = true;
    return check_piece(checked::piece_of(text), testing::shared_facts(), options);
}

} // namespace

TEST_CASE("The driest and the dampest month are what the findings say of those seasons", "[checks][months]")
{
    const ReportContent content = porch_in("outdoors under a roof, Portland, Oregon");
    REQUIRE(content.drawn->months);
    const DrawnMonths& months = *content.drawn->months;
    CHECK(months.moisture[6] == 11.7);
    CHECK(months.moisture[11] == 17.4);
    CHECK_THAT(months.source, ContainsSubstring("table 13-1, Portland (from memory)"));
    std::size_t sizes = 0, gaps = 0;
    for (const MonthRow& row : months.rows) {
        CAPTURE(row.check, row.subject);
        const bool size = row.check == "seasonal-size";
        ++(size ? sizes : gaps);
        const Finding& f = checked::finding_of(content.findings, row.check, row.subject);
        const std::string what = size ? "size" : "gap";
        CHECK_THAT(row.made, WithinAbs(checked::value_of(f, what + "_made"), 1e-12));
        CHECK_THAT(row.months[6], WithinAbs(checked::value_of(f, what + "_driest"), 1e-12));
        CHECK_THAT(row.months[11], WithinAbs(checked::value_of(f, what + "_dampest"), 1e-12));
        // Between them every month lies between.
        for (const double v : row.months) {
            CHECK(v >= std::min(row.months[6], row.months[11]) - 1e-12);
            CHECK(v <= std::max(row.months[6], row.months[11]) + 1e-12);
        }
    }
    CHECK(sizes >= 3);
    CHECK(gaps >= 1);
}

TEST_CASE("The charts run through the months where the room has them, else through three states", "[checks][months][chart]")
{
    HtmlOut out;
    put_month_charts(out, porch_in("outdoors under a roof, Portland, Oregon"));
    const std::string charts = out;
    for (const char* words : {"moisture content [%], by month", "narrower or wider than made [mm], by month",
                              "gap or room [mm], by month", "least 11.7 % in July, most 17.4 % in December", "(from memory)"})
        CHECK_THAT(charts, ContainsSubstring(words));
    for (const auto& p : drawn::points_of_paths(charts)) CHECK((p.x >= 0 && p.x <= 360 && p.y >= 0 && p.y < 600));
    const ReportContent indoors = porch_in("heated, cold winters");
    CHECK_FALSE(indoors.drawn->months);
    CHECK_FALSE(has_months(indoors));
    HtmlOut none;
    put_month_charts(none, indoors);
    CHECK(none.size() == 0);
}
