#include "report/charts/chart_use.hpp"

#include "report/charts/chart_axis.hpp"
#include "report/drawings/svg.hpp"
#include "report/words/people.hpp"

#include "measure/write.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using namespace drawing;

constexpr double kUseWide = 360, kBarFrom = 8, kBarTo = 346, kBarRow = 38, kBarTop = 8;
constexpr std::size_t kMostBars = 12;
constexpr int kSubjectColumns = 36;

std::vector<const Finding*> largest_first(const ReportContent& content)
{
    std::vector<const Finding*> sorted;
    for (const Finding& f : content.findings)
        if (f.utilisation && std::isfinite(*f.utilisation)) sorted.push_back(&f);
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Finding* a, const Finding* b) { return *a->utilisation > *b->utilisation; });
    return sorted;
}

void put_words(HtmlOut& out, const Finding& f, double top)
{
    put_label(out, {kBarFrom, top + 13}, clipped_words(fmt::format("{}, {}", f.subject, f.check), kSubjectColumns), Anchor::start,
              "over");
    put(out, "<text class=\"{} said\" x=\"{}\" y=\"{:.1f}\" text-anchor=\"end\">{} {}</text>\n", css_class(f.verdict), kBarTo,
        top + 13, verdict_title(f.verdict), utilisation_words(f).value_or(""));
}

void put_use_bar(HtmlOut& out, const Finding& f, const ChartAxis& axis, double top)
{
    const double use = std::max(*f.utilisation, 0.0), bar = top + 18;
    put(out, "<rect class=\"{} used\" x=\"{}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"10\"/>\n", css_class(f.verdict), kBarFrom,
        bar, std::min(axis.place(use), kBarTo) - kBarFrom);
    if (use > axis.hi)
        put(out, "<path class=\"off\" d=\"M{0:.1f} {1:.1f}l5 5l-5 5M{2:.1f} {1:.1f}l5 5l-5 5\"/>\n", kBarTo - 12, bar,
            kBarTo - 18);
    if (f.fails_from && std::isfinite(*f.fails_from) && *f.fails_from > 1 && *f.fails_from <= axis.hi)
        put_line(out, {axis.place(*f.fails_from), bar - 1}, {axis.place(*f.fails_from), bar + 11}, "failing");
}

} // namespace

void put_use_chart(HtmlOut& out, const ReportContent& content)
{
    const std::vector<const Finding*> sorted = largest_first(content);
    if (sorted.empty()) return;
    const std::size_t shown = std::min(sorted.size(), kMostBars);
    const ChartAxis axis = axis_over(0, std::clamp(*sorted.front()->utilisation, 1.2, 2.5), 5, kBarFrom, kBarTo);
    const double bottom = kBarTop + kBarRow * static_cast<double>(shown), high = bottom + 44;
    bool failing_drawn = false;
    std::string words;
    for (std::size_t i = 0; i < shown; ++i) {
        failing_drawn = failing_drawn || sorted[i]->fails_from.has_value();
        words += fmt::format("{}, {}: {}, {}. ", clipped_words(sorted[i]->subject, 60), sorted[i]->check,
                             utilisation_words(*sorted[i]).value_or(""), verdict_title(sorted[i]->verdict));
    }
    put(out, "<figure class=\"chart\">\n");
    open_drawing(out, "use", kUseWide, high, "img", "How much of each limit is used", words);
    for (const double tick : axis.ticks()) {
        const double x = axis.place(tick);
        put_line(out, {x, bottom}, {x, bottom + 4}, "dim");
        put_label(out, {x, bottom + 17}, write_number(tick),
                  x < kBarFrom + 8 ? Anchor::start
                  : x > kBarTo - 8 ? Anchor::end
                                   : Anchor::middle);
    }
    put_line(out, {kBarFrom, bottom}, {kBarTo, bottom}, "dim");
    put_label(out, {(kBarFrom + kBarTo) / 2, bottom + 36}, "share of the limit [1 = the limit]");
    // The line lies over the bars and under the words.
    const auto top_of = [](std::size_t i) { return kBarTop + kBarRow * static_cast<double>(i); };
    for (std::size_t i = 0; i < shown; ++i) put_use_bar(out, *sorted[i], axis, top_of(i));
    put_line(out, {axis.place(1), kBarTop + 16}, {axis.place(1), bottom}, "passing");
    for (std::size_t i = 0; i < shown; ++i) put_words(out, *sorted[i], top_of(i));
    close_drawing(out);
    put(out,
        "<figcaption>How much of each limit is used, largest first. The long line is the limit of a "
        "pass{}.{}</figcaption>\n</figure>\n",
        failing_drawn ? "; a short dashed line is where a warning turns to a fail" : "",
        sorted.size() > shown ? fmt::format(" {} more use less.", sorted.size() - shown) : "");
}

} // namespace jointwright
