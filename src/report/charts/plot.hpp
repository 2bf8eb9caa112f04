#pragma once
// Charts as one SVG: panels one below the other over a common axis. Black on white, told apart by shape and words, never by colour.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// A curve of a panel, in the numbers that its axes show.
struct PlotCurve {
    std::vector<double> x, y;
    bool filled = false; ///< down to the zero line
    bool dashed = false;
};

/// A place of a curve with words beside it.
struct PlotMark {
    double x = 0, y = 0;
    std::string words;
};

/// One chart. The vertical axis always shows its zero line.
struct PlotPanel {
    std::string heading; ///< what it shows and in which unit: "Shear force, N"
    std::vector<PlotCurve> curves;
    std::vector<PlotMark> marks;
    bool grows_downward = false; ///< positive values below the zero line, as a sag is seen
    double height = 110;         ///< of the charted field
};

struct PlotPage {
    std::string title;          ///< for screen readers and as the heading
    std::string says;           ///< a longer description for those who cannot see it
    double from = 0, to = 1;    ///< ends of the common axis
    std::string across;         ///< its name and unit: "place along the beam, mm"
    std::vector<double> guides; ///< places marked by a dashed line through all panels
    std::vector<PlotPanel> panels;
    double head_height = 0; ///< room between heading and first panel for `head`
    std::string head;       ///< markup of the caller's own, drawn with plot_across and y from 0 to head_height
};

/// A straight map from the numbers of an axis to the drawing.
struct PlotScale {
    double from = 0, to = 1, at_from = 0, at_to = 1;
    double operator()(double v) const { return at_from + (v - from) / (to - from) * (at_to - at_from); }
};

/// Width of every page in its own units; letters are 11 to 13 of them high, so that it reads well from 360 pixels up.
constexpr double kPlotWidth = 360;

/// The common axis of a page, for drawing its head.
PlotScale plot_across(const PlotPage& page);

/// At most `most` + 1 round values (1, 2 or 5 times a power of ten apart) that lie within two bounds, rising.
std::vector<double> plot_ticks(double lo, double hi, int most);

/// The page as one <svg> with title and description, no ids, scripts or outside references: alone in a file or inside a page.
std::string plot_svg(const PlotPage& page);

/// A coordinate of a drawing with two digits behind the point and no idle zeros.
std::string svg_number(double v);

/// An arrow from one point to another with its head at the end.
std::string svg_arrow(double x0, double y0, double x1, double y1);

} // namespace jointwright
