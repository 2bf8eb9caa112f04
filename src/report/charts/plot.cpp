#include "report/charts/plot.hpp"

#include "measure/write.hpp"
#include "report/markup/html_parts.hpp"
#include "report/words/display_width.hpp"
#include "report/words/wrap.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kLeft = 46, kRight = 14, kTop = 8;     // margins
constexpr double kLine = 15, kHeading = 20, kFoot = 18; // heights of text lines
constexpr double kBetween = 12;                         // between panels
constexpr double kLetter = 6.1;                         // mean width of a letter of 11
constexpr double kHeadingLetter = 7.9;                  // and of a bold one of 13
constexpr std::string_view kHalo = R"(style="paint-order:stroke" stroke="#fff" stroke-width="3" stroke-linejoin="round")";

/// Bounds of a panel's axis: all its values and zero, with a little air.
std::pair<double, double> bounds_of_panel(const PlotPanel& panel)
{
    double lo = 0, hi = 0;
    for (const PlotCurve& curve : panel.curves)
        for (const double y : curve.y) {
            lo = std::min(lo, y);
            hi = std::max(hi, y);
        }
    if (lo == hi) hi = 1;
    const double air = 0.16 * (hi - lo);
    return {lo < 0 ? lo - air : lo, hi > 0 ? hi + air : hi};
}

std::string tick_words(double v, double step)
{
    if (std::abs(v) < step * 1e-6) return "0";
    std::string words = write_number(v, 4);
    if (!words.empty() && words.front() == '-') words.replace(0, 1, "−");
    return words;
}

double step_of(const std::vector<double>& ticks) { return ticks.size() > 1 ? ticks[1] - ticks[0] : 1; }

class PlotWriter {
public:
    explicit PlotWriter(const PlotPage& page) : page_(page), across_(plot_across(page)) {}

    std::string write()
    {
        double y = kTop;
        for (const std::string& line : wrapped_heading()) {
            y += kLine;
            put(body_,
                R"(<text x="8" y="{}" font-size="13" font-weight="600">{}</text>)"
                "\n",
                svg_number(y), html_text(line));
        }
        y += 8;
        if (page_.head_height > 0) {
            put(body_,
                R"svg(<g transform="translate(0 {})">{}</g>)svg"
                "\n",
                svg_number(y), page_.head);
            y += page_.head_height;
        }
        for (std::size_t i = 0; i < page_.panels.size(); ++i) y = panel(page_.panels[i], y, i + 1 == page_.panels.size());
        return whole(y + 8);
    }

private:
    std::vector<std::string> wrapped_heading() const
    {
        std::vector<std::string> lines(1);
        std::string word;
        const auto take = [&] {
            if (!lines.back().empty() && columns_of(lines.back() + " " + word) * kHeadingLetter > kPlotWidth - 16)
                lines.emplace_back();
            if (!lines.back().empty()) lines.back() += ' ';
            lines.back() += word;
            word.clear();
        };
        for (const char c : page_.title) {
            if (c != ' ') word += c;
            if (c == ' ' && !word.empty()) take();
        }
        if (!word.empty()) take();
        return lines;
    }

    double panel(const PlotPanel& panel, double y, bool last)
    {
        y += kHeading;
        put(body_,
            R"(<text x="8" y="{}" font-size="12">{}</text>)"
            "\n",
            svg_number(y - 6), html_text(panel.heading));
        const auto [lo, hi] = bounds_of_panel(panel);
        const PlotScale up =
            panel.grows_downward ? PlotScale{lo, hi, y, y + panel.height} : PlotScale{lo, hi, y + panel.height, y};
        grid(up, y, y + panel.height);
        for (const PlotCurve& curve : panel.curves) draw(curve, up);
        for (const PlotMark& mark : panel.marks) draw(mark, panel, up, y);
        put(body_,
            R"(<path d="M{0} {2}H{1}" stroke="#000" stroke-width="1.2"/>)"
            "\n",
            svg_number(across_.at_from), svg_number(across_.at_to), svg_number(up(0)));
        y += panel.height;
        return last ? foot(y) : y + kBetween;
    }

    void grid(const PlotScale& up, double top, double bottom)
    {
        put(body_, R"(<g stroke="#bbb" stroke-width=".6">)");
        const auto steps = plot_ticks(std::min(up.from, up.to), std::max(up.from, up.to), 4);
        for (const double t : steps)
            put(body_, R"(<path d="M{} {}H{}"/>)", svg_number(across_.at_from), svg_number(up(t)), svg_number(across_.at_to));
        put(body_, R"(</g><g stroke="#777" stroke-width=".8" stroke-dasharray="3 3">)");
        for (const double g : page_.guides)
            put(body_, R"(<path d="M{} {}V{}"/>)", svg_number(across_(g)), svg_number(top), svg_number(bottom));
        put(body_, R"(</g><g font-size="11" text-anchor="end">)");
        for (const double t : steps)
            put(body_, R"(<text x="{}" y="{}">{}</text>)", svg_number(kLeft - 4), svg_number(up(t) + 4),
                tick_words(t, step_of(steps)));
        put(body_, "</g>\n");
    }

    void draw(const PlotCurve& curve, const PlotScale& up)
    {
        if (curve.x.empty()) return;
        std::string path;
        for (std::size_t i = 0; i < curve.x.size(); ++i)
            path += fmt::format("{}{} {}", i == 0 ? "M" : "L", svg_number(across_(curve.x[i])), svg_number(up(curve.y[i])));
        if (curve.filled)
            put(body_, R"(<path d="{}L{} {}L{} {}Z" fill="#000" fill-opacity=".1"/>)", path, svg_number(across_(curve.x.back())),
                svg_number(up(0)), svg_number(across_(curve.x.front())), svg_number(up(0)));
        put(body_,
            R"(<path d="{}" fill="none" stroke="#000" stroke-width="1.6" stroke-linejoin="round"{}/>)"
            "\n",
            path, curve.dashed ? R"( stroke-dasharray="5 3")" : "");
    }

    void draw(const PlotMark& mark, const PlotPanel& panel, const PlotScale& up, double top)
    {
        const double x = across_(mark.x), y = up(mark.y), wide = kLetter * columns_of(mark.words);
        // Away from the zero line, turned back where it would leave the field.
        double beside = y > up(0) ? y + 13 : y - 6;
        if (beside < top + 9) beside = y + 14;
        if (beside > top + panel.height) beside = y - 6;
        const double middle = std::clamp(x, kLeft + wide / 2, kPlotWidth - 4 - wide / 2);
        put(body_, R"(<circle cx="{}" cy="{}" r="2.6"/>)", svg_number(x), svg_number(y));
        put(body_,
            R"(<text x="{}" y="{}" font-size="11" font-weight="600" text-anchor="middle" {}>{}</text>)"
            "\n",
            svg_number(middle), svg_number(beside), kHalo, html_text(mark.words));
    }

    double foot(double y)
    {
        const auto steps = plot_ticks(page_.from, page_.to, 6);
        put(body_, R"(<g font-size="11" text-anchor="middle">)");
        for (const double t : steps) {
            put(body_, R"(<path d="M{0} {1}v4" stroke="#000"/>)", svg_number(across_(t)), svg_number(y));
            put(body_, R"(<text x="{}" y="{}">{}</text>)", svg_number(across_(t)), svg_number(y + kFoot - 2),
                tick_words(t, step_of(steps)));
        }
        put(body_,
            R"(<text x="{}" y="{}" font-size="12">{}</text></g>)"
            "\n",
            svg_number((across_.at_from + across_.at_to) / 2), svg_number(y + 2 * kFoot - 3), html_text(page_.across));
        return y + 2 * kFoot;
    }

    std::string whole(double height)
    {
        HtmlOut out;
        put(out,
            R"(<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 {0} {1}" width="100%" style="max-width:45rem;background:#fff" font-family="sans-serif" fill="#000">)"
            "\n<title>{2}</title>\n<desc>{3}</desc>\n"
            R"(<rect width="{0}" height="{1}" fill="#fff"/>)"
            "\n",
            svg_number(kPlotWidth), svg_number(height), html_text(page_.title), html_text(page_.says));
        return out + body_ + "</svg>\n";
    }

    const PlotPage& page_;
    PlotScale across_;
    HtmlOut body_;
};

} // namespace

PlotScale plot_across(const PlotPage& page) { return {page.from, page.to, kLeft, kPlotWidth - kRight}; }

std::vector<double> plot_ticks(double lo, double hi, int most)
{
    std::vector<double> ticks;
    if (!(hi > lo) || most < 1) return ticks;
    const double rough = (hi - lo) / most, power = std::pow(10, std::floor(std::log10(rough)));
    double step = 10 * power;
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * power >= rough * (1 - 1e-9)) {
            step = factor * power;
            break;
        }
    for (double n = std::ceil(lo / step - 1e-9); n * step <= hi + 1e-9 * step; ++n) ticks.push_back(n * step + 0.0);
    return ticks;
}

std::string plot_svg(const PlotPage& page) { return PlotWriter(page).write(); }

std::string svg_number(double v)
{
    std::string text = fmt::format("{:.2f}", v);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string svg_arrow(double x0, double y0, double x1, double y1)
{
    const double length = std::hypot(x1 - x0, y1 - y0);
    if (length == 0) return {};
    const double ux = (x1 - x0) / length, uy = (y1 - y0) / length, head = 6, half = 2.6;
    const double bx = x1 - ux * head, by = y1 - uy * head;
    return fmt::format(R"(<path d="M{} {}L{} {}" stroke="#000" stroke-width="1.2"/><path d="M{} {}L{} {}L{} {}Z"/>)",
                       svg_number(x0), svg_number(y0), svg_number(bx), svg_number(by), svg_number(x1), svg_number(y1),
                       svg_number(bx - uy * half), svg_number(by + ux * half), svg_number(bx + uy * half),
                       svg_number(by - ux * half));
}

} // namespace jointwright
