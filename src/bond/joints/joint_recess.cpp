// Housings, grooves and sliding dovetails: parts let into a recess bear by pressing on its walls, and by glue where the walls are side grain.

#include "bond/joints/joint_forms.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace jointwright {

namespace {

/// A part let in: b along the recess, L deep, T thick.
struct LetIn {
    double b = 0, depth = 0, thick = 0;
    double pressed = 0; ///< stress at which the softer of wall and part is marked [Pa]
    double turned = 0;  ///< the same where it is turned: no wood beside its end helps [Pa]
    double wall =
        0; ///< force that the wood of the post beside the recess bears, by shear or by tearing across; infinite where not told
};

double value_or_nothing(const std::optional<Property<Stress>>& p) { return p ? p->value.value() : 0; }

/// Wood beside the recess, loaded at half the depth: cut across the post's grain it shears off along it, cut along the grain it is torn off.
double wall_strength(const JointGround& g, const LetIn& in)
{
    const double lip = in_metres(g.sizes.lip), f = g.woods.post->shear->value.value();
    if (lip <= 0) return std::numeric_limits<double>::infinity();
    if (!g.sizes.along_post) return f * lip * in.b;
    const double rolling = g.facts.number("crossed_grain_share").value * f * lip * in.b,
                 torn = value_or_nothing(g.woods.post->tension_across) * in.b * lip * lip / (3 * in.depth);
    return torn > 0 ? std::min(rolling, torn) : rolling;
}

LetIn let_in(const JointGround& g)
{
    const JointSizes& s = g.sizes;
    LetIn in{
        in_metres(s.width), in_metres(s.length), in_metres(s.thickness.value() > 0 ? s.thickness : s.rail_thickness), 0, 0, 0};
    // A short bearing near the end of long fibres is helped by the wood beside it.
    const double spread = s.grain_enters ? g.facts.number("bearing_spread").value : 1;
    const double part = spread * value_or_nothing(g.woods.rail->compression_across),
                 wall = value_or_nothing(s.along_post ? g.woods.post->compression_across : g.woods.post->compression_along);
    in.pressed = part > 0 && wall > 0 ? std::min(part, wall) : std::max(part, wall);
    in.turned = s.grain_enters ? std::min(in.pressed, part > 0 ? part / spread : in.pressed) : in.pressed;
    in.wall = wall_strength(g, in);
    return in;
}

std::string mm_words(double v) { return write_number(v * 1e3, 4); }

/// Turned out of the recess or in it: the walls are pressed more and more towards either end.
void turn_in_recess(const JointGround& g, const LetIn& in, JointCapacity& c)
{
    c.shape = newton_metres(in.turned * in.b * in.depth * in.depth / 6);
    c.torsion_pressed = newton_metres(in.turned * in.depth * in.b * in.b / 6);
    c.torsion = section_twist(metres(in.b), metres(in.thick), g.woods.rail->shear->value);
    g.say({"Turned out of the recess: its walls pressed from mouth to bottom", "M = f_90 b L²/6",
           fmt::format("f_90 = {}", write_stress(pascals(in.turned))), c.shape.value(), "N m", "mechanics"});
    if (!std::isfinite(in.wall)) return;
    // The force on either wall acts two thirds of the depth, or of the length, from that on the other.
    c.shape_breaks = newton_metres(in.wall * 2 / 3 * in.depth);
    c.torsion = std::min(c.torsion, newton_metres(in.wall / 2 * 2 / 3 * in.b));
    g.say(
        {"The same, when the wood beside the recess breaks off", "M = V 2 L/3", "", c.shape_breaks.value(), "N m", "mechanics"});
}

/// Down or up on a wall of the recess: pressing, the wood beside it, and the part's own section.
void bear_on_wall(const JointGround& g, const LetIn& in, JointCapacity& c)
{
    const double own = 2.0 / 3 * g.woods.rail->shear->value.value() * in.b * in.thick,
                 bearing = in.pressed > 0 ? in.pressed * in.b * in.depth : own;
    c.section_shear = newtons(std::min(own, in.wall));
    c.pressed = newtons(bearing);
    g.say({"Pressed on a wall of the recess, by the softer of the two woods", "V = f_c b L",
           fmt::format("f_c = {}{}, b = {} mm, L = {} mm", write_stress(pascals(in.pressed)),
                       g.sizes.grain_enters
                           ? ", of the end across its grain twice the proportional limit, as the wood beside it helps"
                           : "",
                       mm_words(in.b), mm_words(in.depth)),
           bearing, "N", g.facts.number("bearing_spread").cite.text()});
    if (std::isfinite(in.wall))
        g.say({g.sizes.along_post ? "Wood beside the recess, sheared off across its grain or torn off"
                                  : "Wood beside the recess, sheared off along its grain",
               g.sizes.along_post ? "V = min(f_v/3 h b, f_t b h²/(3 L))" : "V = f_v h b",
               fmt::format("h = {} mm left to the edge or end", mm_words(in_metres(g.sizes.lip))), in.wall, "N", "mechanics"});
    turn_in_recess(g, in, c);
}

/// The walls' glue, where they are side grain.
void glue_on_walls(const JointGround& g, const LetIn& in, JointCapacity& c)
{
    if (!g.woods.glue) return;
    if (!g.sizes.along_post) {
        g.say({"Across the post the walls of the recess are end grain, and so is the rail's end on its bottom: no glue counts",
               "f = 0", "", 0, "Pa", g.facts.cite("wood-handbook-2010", "ch. 10, p. 10-18 (retrieved)")});
        return;
    }
    const Stress f = g.glue_strength_at(g.sizes.grain_enters ? std::numbers::pi / 2 : 0);
    c.glued = square_metres(2 * in.b * in.depth);
    c.withdrawal = newtons(f.value() * c.glued.value());
    c.glue_line = newton_metres(f.value() * in.b * in.depth * in.thick);
    c.flat = twist_capacity({metres(in.b), metres(in.depth), 2}, f);
    g.say({"Glue on both walls, turned about the recess", "M = f b L T", fmt::format("T = {} mm", mm_words(in.thick)),
           c.glue_line.value(), "N m", "mechanics"});
    g.say({"The same glue, the part turned in its own plane", "T_u = f ∫ρ dA", "", c.flat.value(), "N m", "mechanics"});
}

/// A tail drawn out of its socket by force, without friction: its slopes press on the walls.
void wedge_of_slide(const JointGround& g, const LetIn& in, JointCapacity& c)
{
    const JointSizes& s = g.sizes;
    if (s.slope <= 0) return;
    const double overhang = in.depth / s.slope, sine = std::sin(std::atan(1 / s.slope));
    const double third = g.facts.number("crossed_grain_share").value, shear = g.woods.rail->shear->value.value();
    const double pressing = 2 * in.pressed * in.b * in.depth * sine;
    const double corners = 2 * (s.grain_enters ? shear : third * shear) * in.b * in.depth;
    const double walls = 2 * in.wall * sine;
    const double across = value_or_nothing(g.woods.rail->tension_across),
                 along = value_or_nothing(g.woods.rail->bending_strength);
    const double neck = (s.grain_enters ? along : across) * in.b * std::max(0.0, in.thick - 2 * overhang);
    c.wedge = newtons(std::min({pressing, corners, walls, neck > 0 ? neck : pressing}));
    g.say({"Held by its slopes alone, without friction", "N = 2 f_c b L sin α",
           fmt::format("slope 1 in {}; not more than shear of the tail's corners, its neck in tension and the socket's walls",
                       write_number(s.slope, 2)),
           c.wedge.value(), "N", "mechanics (engineering estimate)"});
}

} // namespace

void housing_strength(const JointGround& g, JointForm form, JointCapacity& c)
{
    const LetIn in = let_in(g);
    bear_on_wall(g, in, c);
    glue_on_walls(g, in, c);
    c.range.push_back(fmt::format("no published strength of a {} was found: pressing on its walls and shear of the wood beside "
                                  "them are reckoned{}",
                                  form == JointForm::groove ? "groove" : "housing",
                                  g.sizes.along_post ? "" : "; its glue counts as nothing"));
}

void sliding_dovetail_strength(const JointGround& g, JointCapacity& c)
{
    const LetIn in = let_in(g);
    bear_on_wall(g, in, c);
    glue_on_walls(g, in, c);
    wedge_of_slide(g, in, c);
    c.range.push_back("no published strength of a sliding dovetail was found: glue on its flanks where they are side grain, else "
                      "the pressing on its slopes, whichever is more");
}

} // namespace jointwright
