#include "report/drawings/joint.hpp"

#include "measure/write.hpp"
#include "report/drawings/bodies.hpp"
#include "report/drawings/scale.hpp"
#include "report/drawings/svg.hpp"
#include "report/words/display_width.hpp"
#include "review/pictures/drawn_piece.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

namespace jointwright {

namespace {

using namespace drawing;
using kernel::Cell;

constexpr double kWide = 440, kHigh = 330, kRoom = 34; // units of the drawing; room for arrows and names round it
constexpr double kArrow = 30;                          // units: the longest movement arrow
constexpr double kHardly = 0.05;                       // share of the other part's movement that is called hardly any

Vec vec_of(const Point& p) { return {p[0], p[1], p[2]}; }

/// What is drawn of one part: near the contact, moved by `shift`.
std::vector<Cell> near_cells(const DrawnBody& body, const Box& contact, double margin, const Vec& shift)
{
    const std::vector<kernel::HalfSpace> window =
        kernel::box_sides(vec_of(contact.lo) - Vec::Constant(margin), vec_of(contact.hi) + Vec::Constant(margin));
    std::vector<Cell> cells;
    for (const Cell& whole : body.solid.cells) {
        Cell cell = kernel::clip(whole, window);
        if (cell.empty()) continue;
        for (kernel::Polygon& face : cell.faces)
            for (Vec& p : face.corners) p += shift;
        for (kernel::HalfSpace& side : cell.sides) side.offset += side.normal.dot(shift);
        cells.push_back(std::move(cell));
    }
    return cells;
}

Vec middle_of_cells(const std::vector<Cell>& cells)
{
    Vec lo = Vec::Constant(1e9), hi = Vec::Constant(-1e9);
    for (const Cell& cell : cells) {
        Vec a, b;
        kernel::bounds(cell, a, b);
        lo = lo.cwiseMin(a);
        hi = hi.cwiseMax(b);
    }
    return (lo + hi) / 2;
}

struct Apart {
    std::vector<Cell> first, second;
    Vec shift{0, 0, 0};
    double size = 0; ///< longest side of the contact [m]
};

Apart taken_apart(const DrawnPiece& drawn, const ExplodedJoint& joint)
{
    constexpr double kLeastMargin = 0.045;
    Apart apart;
    for (const Axis a : {Axis::x, Axis::y, Axis::z}) apart.size = std::max(apart.size, joint.contact.size(a));
    const double margin = std::max(kLeastMargin, 0.3 * apart.size);
    const Vec way = vec_of(joint.apart);
    const Vec extent = vec_of(joint.contact.hi) - vec_of(joint.contact.lo);
    // Clear of each other, and some air between them.
    apart.shift = way * (std::abs(way.dot(extent)) + 0.8 * margin);
    apart.first = near_cells(drawn.bodies[joint.first], joint.contact, margin, apart.shift);
    apart.second = near_cells(drawn.bodies[joint.second], joint.contact, margin, Vec::Zero());
    return apart;
}

const std::string& name_of_part(const ReportContent& content, std::size_t body)
{
    return content.parts[content.drawn->bodies[body].part].id;
}

/// Dashed lines along which the parts go together: from the corners of the contact.
void put_paths(HtmlOut& out, const ExplodedJoint& joint, const Apart& apart, const View& view, const Sheet& sheet)
{
    std::vector<Vec> corners;
    for (int k = 0; k < 8; ++k) {
        const Vec p(k & 1 ? joint.contact.hi[0] : joint.contact.lo[0], k & 2 ? joint.contact.hi[1] : joint.contact.lo[1],
                    k & 4 ? joint.contact.hi[2] : joint.contact.lo[2]);
        const Vec q = view.place(p);
        corners.emplace_back(q.x(), q.y(), 0);
    }
    const Vec shift = view.direct(apart.shift);
    // Only the two outermost: those farthest to either side of the way.
    const auto side = [&](const Vec& p) { return p.x() * shift.y() - p.y() * shift.x(); };
    const auto [least, most] =
        std::minmax_element(corners.begin(), corners.end(), [&](const Vec& a, const Vec& b) { return side(a) < side(b); });
    for (const Vec& p : {*least, *most})
        put_line(out, sheet.place({p.x(), p.y()}), sheet.place({p.x() + shift.x(), p.y() + shift.y()}), "path");
}

/// Where words stand.
struct Words {
    Dot at;
    Anchor anchor = Anchor::start;
    double wide = 0;
    double from() const { return anchor == Anchor::end ? at.x - wide : at.x; }
    bool meets(const Words& other) const
    {
        constexpr double kLineHigh = 17;
        return std::abs(at.y - other.at.y) < kLineHigh && from() < other.from() + other.wide && other.from() < from() + wide;
    }
};

/// The name beside an arrow that reaches by x and y from its middle: to the right where there is room, else to the left, else as far as
/// the drawing goes; a line lower where it would lie on another's.
Words place_of_words(const std::string& words, const Dot& at, double x, double y, const std::vector<Words>& taken)
{
    constexpr double kLetter = 7.6, kAside = 7, kLower = 18;
    const double wide = kLetter * columns_of(std::string_view{words});
    const double right = at.x + x + kAside, left = at.x - x - kAside;
    Words place{{right, at.y + y + 5}, Anchor::start, wide};
    if (right + wide >= kWide)
        place = left - wide > 0 ? Words{{left, at.y - y + 5}, Anchor::end, wide}
                                : Words{{kWide - kAside, at.y + y + 20}, Anchor::end, wide};
    for (const Words& other : taken)
        if (place.meets(other)) place.at.y = other.at.y + kLower;
    return place;
}

/// A double arrow along the grain with the part's name, over the middle of what is drawn of it.
void put_grain_arrow(HtmlOut& out, const std::string& name, const std::vector<Cell>& cells, const Vec& grain, const View& view,
                     const Sheet& sheet, std::vector<Words>& taken)
{
    constexpr double kLength = 52;
    const Vec middle = view.place(middle_of_cells(cells)), along = view.direct(grain);
    const double length = std::hypot(along.x(), along.y());
    const Dot at = sheet.place({middle.x(), middle.y()});
    double x = 0, y = 0;
    if (length > 0.05) {
        x = along.x() / length * kLength / 2;
        y = -along.y() / length * kLength / 2;
        if (x < 0) x = -x, y = -y;
        put_arrow(out, {at.x - x, at.y - y}, {at.x + x, at.y + y}, "halo", true);
        put_arrow(out, {at.x - x, at.y - y}, {at.x + x, at.y + y}, "along", true);
    }
    const std::string words = "grain of " + clipped_words(name, 22);
    const Words place = place_of_words(words, at, x, y, taken);
    put_label(out, place.at, words, place.anchor, "name");
    taken.push_back(place);
}

void put_move_arrow(HtmlOut& out, const Vec& edge, const Vec& tip, const View& view, const Sheet& sheet)
{
    const Vec a = view.place(edge), b = view.place(tip);
    const Dot from = sheet.place({a.x(), a.y()}), to = sheet.place({b.x(), b.y()});
    put_arrow(out, from, to, "halo");
    put_arrow(out, from, to, "move");
}

/// Arrows at both ends of the contact: outwards when the part swells, inwards when it shrinks.
void put_move_arrows(HtmlOut& out, const Vec& middle, const DrawnMove& move, double change, double times, const View& view,
                     const Sheet& sheet)
{
    // A panel shows the one edge that sits in the groove.
    for (const double end : move.at_edge ? std::vector<double>{1.0} : std::vector<double>{-1.0, 1.0}) {
        const Vec edge = move.at_edge ? middle : Vec(middle + vec_of(move.direction) * end * move.length / 2);
        const Vec tip = edge + vec_of(move.direction) * end * change / 2 * times;
        put_move_arrow(out, edge, tip, view, sheet);
    }
}

/// The same across one part of a mitre, from edge to edge of it.
void put_across_arrows(HtmlOut& out, const Vec& shift, const DrawnAcross& across, double times, const View& view,
                       const Sheet& sheet)
{
    const Vec middle = vec_of(across.at) + shift, way = vec_of(across.direction);
    for (const double end : {-0.5, 0.5})
        put_move_arrow(out, middle + way * end * across.length, middle + way * end * (across.length + across.change * times),
                       view, sheet);
}

std::string change_words(const ReportContent& content, std::size_t body, double change, double other)
{
    const std::string& name = name_of_part(content, body);
    if (std::abs(change) < kHardly * std::abs(other)) return fmt::format("{} hardly moves", name);
    return fmt::format("{} {} {}", name, change < 0 ? "shrinks" : "swells",
                       write_small_length(metres(std::abs(change)), content.units));
}

std::string times_words(double times)
{
    return times > 1 ? fmt::format("{} times as large as it is", write_number(times)) : "to scale";
}

/// The movements worth an arrow: the largest, and the one across it where it is not small against that.
std::span<const DrawnMove> drawn_moves(const ExplodedJoint& joint)
{
    constexpr double kSmall = 0.3;
    const auto apart = [](const DrawnMove& m) { return std::abs(m.of_first - m.of_second); };
    std::size_t count = std::min<std::size_t>(joint.moves.size(), 2);
    if (count == 2 && apart(joint.moves[1]) < kSmall * apart(joint.moves[0])) count = 1;
    return std::span(joint.moves).first(count);
}

/// "[F]rom made to the driest, over 80 mm: leg shrinks 1.9 mm; top hardly moves".
std::string move_words(const ReportContent& content, const ExplodedJoint& joint, const DrawnMove& move)
{
    return fmt::format("rom made to the {}, over {}: {}; {}", move.driest ? "driest" : "dampest",
                       write_length(metres(move.length), content.units),
                       change_words(content, joint.first, move.of_first, move.of_second),
                       change_words(content, joint.second, move.of_second, move.of_first));
}

/// "stile shrinks 2.5 mm over 114 mm".
std::string across_words(const ReportContent& content, std::size_t body, const DrawnAcross& across)
{
    return fmt::format("{} over {}", change_words(content, body, across.change, 0),
                       write_length(metres(across.length), content.units));
}

/// The largest change of length that is drawn [m].
double largest_change(const ExplodedJoint& joint)
{
    double largest = 0;
    for (const DrawnMove& move : drawn_moves(joint))
        largest = std::max({largest, std::abs(move.of_first), std::abs(move.of_second)});
    for (const DrawnAcross& across : joint.across) largest = std::max(largest, std::abs(across.change));
    return largest;
}

std::string caption_of(const ReportContent& content, const ExplodedJoint& joint, double times)
{
    const std::string pair = fmt::format("The {} of {} and {}, taken apart.", joint.kind, name_of_part(content, joint.first),
                                         name_of_part(content, joint.second));
    if (!joint.across.empty())
        return fmt::format(
            "{} Double arrows run along each grain. From made to the {}, across its grain, {}; {}; along it both hardly "
            "move, and so the cut goes out of its angle. Movement is drawn {}.",
            pair, joint.driest ? "driest" : "dampest", across_words(content, joint.first, joint.across[0]),
            across_words(content, joint.second, joint.across[1]), times_words(times));
    if (joint.moves.empty())
        return fmt::format("{} Double arrows run along each grain.{}", pair,
                           joint.alike ? " Here the two swell and shrink alike." : "");
    const DrawnMove& move = joint.moves.front();
    if (move.at_edge)
        return fmt::format(
            "{} Double arrows run along each grain. From made to the {} {} over its {}, half of it at this edge. Movement is "
            "drawn {}.",
            pair, move.driest ? "driest" : "dampest", change_words(content, joint.first, move.of_first, 0),
            write_length(metres(move.length), content.units), times_words(times));
    std::string words = fmt::format("{} Double arrows run along each grain. F{}.", pair, move_words(content, joint, move));
    for (const DrawnMove& other : drawn_moves(joint).subspan(1))
        words += fmt::format(" The other way, f{}.", move_words(content, joint, other));
    return fmt::format("{} Movement is drawn {}.", words, times_words(times));
}

const ExplodedJoint* joint_of(const ReportContent& content, std::size_t finding)
{
    if (!content.drawn) return nullptr;
    for (const ExplodedJoint& joint : content.drawn->joints)
        if (joint.findings.front() == finding) return &joint;
    return nullptr;
}

/// From the front, or from behind where the first part would else go behind the second.
View view_of(const ExplodedJoint& joint)
{
    constexpr double kTurn = 0.66, kRise = 0.5, kAway = -0.15;
    const View front = view_from_corner(kTurn, kRise), back = view_from_corner(kTurn + 3.14159265358979323846, kRise);
    const Vec apart = vec_of(joint.apart);
    return front.direct(apart).z() < kAway && back.direct(apart).z() > front.direct(apart).z() ? back : front;
}

} // namespace

void put_joint_drawing(HtmlOut& out, const ReportContent& content, std::size_t finding)
{
    const ExplodedJoint* joint = joint_of(content, finding);
    if (!joint) return;
    const Apart apart = taken_apart(*content.drawn, *joint);
    if (apart.first.empty() || apart.second.empty()) return;
    const DrawnBody& first = content.drawn->bodies[joint->first];
    const DrawnBody& second = content.drawn->bodies[joint->second];
    WoodBody drawn_first = wood_body(first), drawn_second = wood_body(second);
    drawn_first.cells = apart.first;
    drawn_first.pith += apart.shift;
    drawn_second.cells = apart.second;
    const std::vector<WoodBody> bodies{drawn_first, drawn_second};
    const View view = view_of(*joint);
    Scene scene = look_at(bodies, view, {});
    const double scale = fitting_scale(scene.lo, scene.hi, kWide - 2 * kRoom, kHigh - 2 * kRoom);
    scene = look_at(bodies, view, {8 / scale, 4 / scale, 8 / scale});
    const double high = (scene.hi.y - scene.lo.y) * scale + 2 * kRoom;
    // More room to the right, where the names go.
    const double left = std::max(kRoom, 0.28 * (kWide - (scene.hi.x - scene.lo.x) * scale));
    const Sheet sheet{scale, left, high - kRoom, scene.lo};
    const double largest = largest_change(*joint) / 2 * scale;
    const double times = largest > 0 ? round_times(kArrow / largest) : 1;
    const std::string caption = caption_of(content, *joint, times);
    put(out, "<figure class=\"close\">\n");
    open_drawing(out, "joint", kWide, high, "img",
                 fmt::format("{} and {} taken apart", name_of_part(content, joint->first), name_of_part(content, joint->second)),
                 caption);
    put_scene(out, scene, bodies, sheet);
    put_paths(out, *joint, apart, view, sheet);
    std::vector<Words> taken;
    put_grain_arrow(out, name_of_part(content, joint->first), apart.first, first.solid.grain, view, sheet, taken);
    put_grain_arrow(out, name_of_part(content, joint->second), apart.second, second.solid.grain, view, sheet, taken);
    const Vec middle = (vec_of(joint->contact.lo) + vec_of(joint->contact.hi)) / 2;
    for (const DrawnMove& move : drawn_moves(*joint)) {
        if (std::abs(move.of_first) >= kHardly * std::abs(move.of_second))
            put_move_arrows(out, middle + apart.shift, move, move.of_first, times, view, sheet);
        if (!move.at_edge && std::abs(move.of_second) >= kHardly * std::abs(move.of_first))
            put_move_arrows(out, middle, move, move.of_second, times, view, sheet);
    }
    if (!joint->across.empty()) {
        put_across_arrows(out, apart.shift, joint->across[0], times, view, sheet);
        put_across_arrows(out, Vec::Zero(), joint->across[1], times, view, sheet);
    }
    close_drawing(out);
    put(out, "<figcaption>{}</figcaption>\n</figure>\n", html_text(caption));
}

} // namespace jointwright
