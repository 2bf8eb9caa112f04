#include "report/charts/beam_chart.hpp"

#include "measure/write.hpp"
#include "report/charts/plot.hpp"
#include "report/words/people.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kHeadHeight = 74, kBeamTop = 38, kMostDepth = 14; // of the sketch of the beam
constexpr double kArrow = 26;                                      // length of a load's arrow

class BeamSketch {
public:
    BeamSketch(const BeamOnSupports& beam, const PlotScale& across, LengthUnit units) : beam_(beam), x_(across), units_(units)
    {
        const double deepest = std::max(in_metres(beam.depth), in_metres(beam.far_depth));
        scale_ = kMostDepth / deepest;
    }

    std::string draw(const std::vector<PlacedLoad>& loads, const std::vector<Length>& supports)
    {
        outline();
        for (const BeamNotch& notch : beam_.notches) cut(notch);
        for (const PlacedLoad& load : loads) arrow(load);
        for (std::size_t i = 0; i < supports.size(); ++i) {
            const bool first = i == 0, last = i + 1 == supports.size();
            const bool wall = (first && beam_.ends != BeamEnds::pinned) || (last && beam_.ends == BeamEnds::fixed);
            if (wall)
                built_in(x(supports[i]), first ? -1 : 1);
            else
                resting(supports[i]);
        }
        return out_;
    }

private:
    double x(Length place) const { return x_(number_in(place, units_)); }
    double depth_at(double place) const
    {
        const double left = -in_metres(beam_.overhang_left), right = in_metres(beam_.span) + in_metres(beam_.overhang_right);
        const double share = (place - left) / (right - left);
        return (in_metres(beam_.depth) + share * (in_metres(beam_.far_depth) - in_metres(beam_.depth))) * scale_;
    }

    void outline()
    {
        const double left = x(-beam_.overhang_left), right = x(beam_.span + beam_.overhang_right);
        out_ +=
            fmt::format(R"(<path d="M{0} {2}H{1}V{4}L{0} {3}Z" fill="#fff" stroke="#000" stroke-width="1.2"/>)", svg_number(left),
                        svg_number(right), svg_number(kBeamTop), svg_number(kBeamTop + in_metres(beam_.depth) * scale_),
                        svg_number(kBeamTop + in_metres(beam_.far_depth) * scale_));
    }

    void cut(const BeamNotch& notch)
    {
        const double middle = in_metres(notch.middle), deep = in_metres(notch.depth) * scale_;
        const double top = notch.from_top ? kBeamTop : kBeamTop + depth_at(middle) - deep;
        const double from = x(notch.middle - notch.width / 2.0), wide = x(notch.middle + notch.width / 2.0) - from;
        out_ += fmt::format(R"(<rect x="{}" y="{}" width="{}" height="{}" fill="#000"/>)", svg_number(from), svg_number(top),
                            svg_number(std::max(wide, 1.0)), svg_number(deep));
    }

    void arrow(const PlacedLoad& load)
    {
        const double from = x(load.from), to = x(load.to), tip = kBeamTop - 1;
        if (to - from < 8) {
            out_ += svg_arrow((from + to) / 2, tip - kArrow, (from + to) / 2, tip);
            return;
        }
        const int arrows = std::clamp(static_cast<int>((to - from) / 22), 1, 14);
        for (int i = 0; i <= arrows; ++i) {
            const double at = from + (to - from) * i / arrows;
            out_ += svg_arrow(at, tip - kArrow / 2, at, tip);
        }
        out_ += fmt::format(R"(<path d="M{} {}H{}" stroke="#000" stroke-width="1.2"/>)", svg_number(from),
                            svg_number(tip - kArrow / 2), svg_number(to));
    }

    void resting(Length place)
    {
        const double at = x(place), y = kBeamTop + depth_at(in_metres(place));
        out_ += fmt::format(R"(<path d="M{0} {1}l-6 10h12Z" fill="#fff" stroke="#000" stroke-width="1.2"/>)", svg_number(at),
                            svg_number(y));
    }

    /// A wall with its hatching on the far side.
    void built_in(double at, int side)
    {
        out_ += fmt::format(R"(<path d="M{} {}V{}" stroke="#000" stroke-width="1.8"/>)", svg_number(at),
                            svg_number(kBeamTop - 10), svg_number(kBeamTop + kMostDepth + 10));
        for (double y = kBeamTop - 6; y < kBeamTop + kMostDepth + 12; y += 6)
            out_ += fmt::format(R"(<path d="M{} {}l{} 5" stroke="#000" stroke-width=".8"/>)", svg_number(at), svg_number(y - 5),
                                5 * side);
    }

    const BeamOnSupports& beam_;
    PlotScale x_;
    LengthUnit units_;
    double scale_ = 1;
    std::string out_;
};

PlotCurve curve_of(const std::vector<double>& at, const std::vector<double>& values, LengthUnit units, bool lengths)
{
    PlotCurve curve;
    curve.filled = true;
    for (std::size_t i = 0; i < at.size(); ++i) {
        curve.x.push_back(number_in(metres(at[i]), units));
        curve.y.push_back(lengths ? number_in(metres(values[i]), units) : values[i]);
    }
    return curve;
}

double shown(Length place, LengthUnit units) { return number_in(place, units); }

} // namespace

std::string beam_chart(const std::string& title, const BeamOnSupports& beam, const std::vector<PlacedLoad>& loads,
                       const SupportedBeamAnswer& answer, LengthUnit units)
{
    const std::string unit(short_name(units));
    const std::string sag = write_small_length(answer.deflection, units), force = write_force(answer.shear, units),
                      moment = value_words(answer.moment.value(), "N m", units);
    PlotPage page;
    page.title = title;
    page.from = shown(-beam.overhang_left, units);
    page.to = shown(beam.span + beam.overhang_right, units);
    page.across = fmt::format("place along the beam from the left support, {}", unit);
    for (const Length& support : answer.supports) page.guides.push_back(shown(support, units));
    const BeamCurves& c = answer.curves;
    page.panels.push_back({"Shear force, N", {curve_of(c.at, c.shear, units, false)}, {}});
    page.panels.back().marks.push_back({shown(answer.shear_force_at, units), answer.shear.value(), force});
    page.panels.push_back({"Bending moment, N m (above zero: stretched below)", {curve_of(c.at, c.moment, units, false)}, {}});
    page.panels.back().marks.push_back({shown(answer.moment_at, units), answer.moment.value(), moment});
    page.panels.push_back({fmt::format("Deflection, {} (down is down)", unit), {curve_of(c.at, c.sag, units, true)}, {}});
    page.panels.back().marks.push_back({shown(answer.deflection_at, units), shown(answer.deflection, units), sag});
    page.panels.back().grows_downward = true;
    page.says = fmt::format("Largest shear force {} at {}; largest bending moment {} at {}; largest deflection {} at {}.", force,
                            write_length(answer.shear_force_at, units), moment, write_length(answer.moment_at, units), sag,
                            write_length(answer.deflection_at, units));
    page.head_height = kHeadHeight;
    page.head = BeamSketch(beam, plot_across(page), units).draw(loads, answer.supports);
    return plot_svg(page);
}

} // namespace jointwright
