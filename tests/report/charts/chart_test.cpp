#include "catch.hpp"
#include "report/sample_content.hpp"

#include "report/charts/chart_axis.hpp"
#include "report/charts/chart_use.hpp"
#include "report/charts/chart_year.hpp"
#include "report/drawings/svg.hpp"

#include <cmath>
#include <limits>

using namespace jointwright;
using drawing::axis_over;
using drawing::ChartAxis;

namespace {

template <class Put>
std::string charted(const Put& put_chart, const ReportContent& content)
{
    HtmlOut out;
    put_chart(out, content);
    return out;
}

} // namespace

TEST_CASE("An axis has round steps and holds its numbers", "[chart]")
{
    const ChartAxis axis = axis_over(-0.011, 0.032, 4, 10, 110);
    CHECK_THAT(axis.step, WithinAbs(0.02, 1e-12));
    CHECK_THAT(axis.lo, WithinAbs(-0.02, 1e-12));
    CHECK_THAT(axis.hi, WithinAbs(0.04, 1e-12));
    CHECK(axis.ticks().size() == 4);
    CHECK_THAT(axis.place(-0.02), WithinAbs(10, 1e-9));
    CHECK_THAT(axis.place(0.01), WithinAbs(60, 1e-9));
}

TEST_CASE("An axis over one number or none is still an axis", "[chart]")
{
    for (const auto& [least, most] : {std::pair{0.0, 0.0}, std::pair{3.0, 3.0}, std::pair{1.0, -1.0},
                                      std::pair{std::nan(""), 1.0}, std::pair{0.0, std::numeric_limits<double>::infinity()}}) {
        const ChartAxis axis = axis_over(least, most, 4, 0, 100);
        CHECK(axis.lo < axis.hi);
        CHECK(axis.ticks().size() >= 2);
        CHECK(axis.ticks().size() < 12);
        CHECK(std::isfinite(axis.place(0.5)));
    }
}

TEST_CASE("Utilisation bars are sorted, the limit is drawn, verdicts stand in words", "[chart]")
{
    ReportContent content = sample_content();
    std::swap(content.findings[0], content.findings[3]);
    content.findings[2].fails_from = 1.5;
    const std::string chart = charted(put_use_chart, content);
    const std::size_t fail = chart.find(">Fail 2.10</text>"), warn = chart.find(">Warn 1.21</text>"),
                      pass = chart.find(">Pass 0.24</text>");
    CHECK(fail < warn);
    CHECK(warn < pass);
    CHECK(pass != std::string::npos);
    CHECK_THAT(chart, ContainsSubstring("class=\"passing\""));
    CHECK_THAT(chart, ContainsSubstring("class=\"failing\""));
    CHECK_THAT(chart, ContainsSubstring("share of the limit [1 = the limit]"));
    for (Finding& f : content.findings) f.utilisation = std::nullopt;
    CHECK(charted(put_use_chart, content).empty());
}

TEST_CASE("Widths and gaps through the year have their unit on the axis and their numbers in words", "[chart]")
{
    ReportContent content = sample_content();
    CHECK(charted(put_width_chart, content).empty());
    CHECK(charted(put_gap_chart, content).empty());
    Finding size = sample_finding("seasonal-size", "slat", Verdict::pass, std::nullopt, "");
    size.values = {{"size_made", 0.0444, "m"}, {"size_driest", 0.0442, "m"}, {"size_dampest", 0.0449, "m"}};
    Finding gap = sample_finding("slat-gap", "slat", Verdict::pass, 0.1, "");
    gap.values = {{"gap_made", 0.008, "m"}, {"gap_driest", 0.0082, "m"}, {"gap_dampest", -0.001, "m"}};
    content.findings.push_back(size);
    content.findings.push_back(gap);
    const std::string widths = charted(put_width_chart, content);
    CHECK_THAT(widths, ContainsSubstring("narrower or wider than made [in]"));
    CHECK_THAT(widths,
               ContainsSubstring("slat, 1 3/4 in wide: 1.74 in at the driest, 1.748 in as made, 1.768 in at the dampest."));
    const std::string gaps = charted(put_gap_chart, content);
    CHECK_THAT(gaps, ContainsSubstring("gap or room [in]"));
    CHECK_THAT(gaps, ContainsSubstring("class=\"zero\""));
    CHECK_THAT(gaps, ContainsSubstring("gaps of slat: 0.323 in at the driest"));
    content.units = LengthUnit::millimetre;
    CHECK_THAT(charted(put_gap_chart, content), ContainsSubstring("gap or room [mm]"));
}

TEST_CASE("Long names are cut in charts, by columns and between characters", "[chart]")
{
    CHECK(drawing::clipped_words("long rail", 12) == "long rail");
    CHECK(drawing::clipped_words("abcdefghij", 5) == "abcd…");
    CHECK(drawing::clipped_words("椅子椅子椅子", 6) == "椅子…");
    for (const std::string& name : hostile_names()) {
        const std::string chart = charted(put_use_chart, hostile_content(name));
        CHECK(chart.find("<script") == std::string::npos);
        CHECK(chart.size() < 20000);
    }
}
