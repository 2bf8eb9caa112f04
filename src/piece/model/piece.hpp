#pragma once
// The model of a piece: what the maker wrote, checked and resolved. Verdicts are unknown here.

#include "facts/facts.hpp"
#include "measure/quantity.hpp"
#include "measure/read.hpp"
#include "piece/model/space.hpp"
#include "piece/text/fault.hpp"
#include "wood/movement.hpp"
#include "wood/room_year.hpp"
#include "wood/state.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

enum class Use { seat, table, shelf, cabinet, panel, none, door, gate };
std::string_view name_of(Use use);
/// Some of its parts bear people or goods; else `carries` may be left out.
bool bears_something(Use use);

/// The room as the design gives it.
struct Room {
    std::optional<std::string> name; ///< of data/rooms.toml, or what it was worked out from: "heated, Harbin, China"
    bool outdoors = false;           ///< open air, under a roof
    std::optional<RoomYear> year;    ///< month by month, where it is known
    Season driest, dampest;
    MoistureContent at_glue_up;
    Temperature shop = Temperature::celsius(20);
    bool shop_stated = false;
};

struct Finish {
    std::string name; ///< as in data/finishes.toml
    int coats = 1;
};

/// One [[wood]] of the design.
struct WoodChoice {
    std::string id;
    std::vector<std::string> species; ///< names of the tables; more than one: not sure which. Empty: own properties alone
    std::vector<Angle> rings;         ///< at least one; more than one: every one is worked out
    bool rings_stated = false;        ///< else flat-sawn is assumed
    std::optional<Finish> finish;
    std::optional<MoistureContent> moisture;
    OwnMovement own_movement;
    OwnStrength own_strength;
    Spot spot;
};

struct Notches {
    Side from = Side::top;
    Length depth, width, first, step; ///< `first`: from the part's left, front or bottom end to the near edge of the first one
    int count = 1;
};

struct Taper {
    Side end = Side::bottom;
    Length width, thickness, over;
    std::vector<Side> flat; ///< sides that stay straight
};

/// A part turned about one axis after it is placed; see turn.hpp.
struct Turn {
    Axis about = Axis::x;
    Angle angle{};
    Point offset{};                           ///< of a point of the axis from the middle of the placed copy's box [m]
    std::array<bool, 3> mirrored_as_placed{}; ///< of the first copy
};

struct GluedUp {
    int boards = 2;
    std::optional<std::string> glue;
};

/// One [[part]] of the design.
struct Part {
    std::string id;
    std::size_t wood = 0; ///< index into Piece::woods
    Length length, width, thickness;
    Axis grain = Axis::x, face = Axis::z;    ///< axis the length runs along; axis the thickness runs along
    std::vector<Angle> rings;                ///< own rings, or those of the wood: at least one
    bool own_rings = false;                  ///< the part states its own rings: they vary apart from the wood's
    std::optional<Finish> finish;            ///< own or the wood's
    std::optional<MoistureContent> moisture; ///< own or the wood's
    std::vector<Notches> notches;
    std::optional<Taper> taper;
    std::optional<Length> round_over;
    std::optional<GluedUp> glued_up;
    std::optional<Turn> turn;
    std::vector<Side> bare;
    std::optional<Side> bark_side;
    std::optional<Length> ring_radius;
    Spot spot;
    /// Axis that the width runs along.
    Axis width_axis() const { return third_axis(grain, face); }
};

/// One copy of a part in space.
struct Copy {
    std::size_t part = 0;
    int number = 1;                 ///< "slat #3"
    Box box;                        ///< as drawn along the axes, before any turn
    std::array<bool, 3> mirrored{}; ///< shape mirrored in itself along x, y, z, against the part as written
};

/// What `screws` may be of.
enum class ScrewKind { wood_screw, pocket_screw, lag_screw, nail, bolt };
std::string_view name_of(ScrewKind kind); ///< "lag screw"

enum class JointKind {
    edge,
    face,
    butt,
    screws,
    buttons,
    dowel,
    tenon,
    housing,
    groove,
    sliding_dovetail,
    bridle,
    dovetail,
    lap,
    mitre,
    hinge
};
std::string_view name_of(JointKind kind); ///< "sliding dovetail"

enum class GluedAt { middle, left, right, front, back, bottom, top };
struct GluedShare {
    Length length;
    GluedAt at = GluedAt::middle;
};

/// One [[joint]] of the design.
struct Joint {
    std::string first, second; ///< as written: a part id or "id #n"
    JointKind kind = JointKind::face;
    std::optional<std::string> glue; ///< name of data/glues.toml; none: dry
    std::optional<GluedShare> glued;
    Length clearance{}; ///< per side
    struct Tenon {
        Length length, width, thickness;
        bool loose = false;  ///< a slip of its own, let into both parts by `length`
        bool mitred = false; ///< its end is cut at 45° where it meets another such tenon
    };
    std::optional<Tenon> tenon;
    std::optional<Length> groove_depth;
    std::optional<Length> lap_first;
    std::optional<Length> bridle_thickness;
    struct Dowels {
        Length diameter, length;
        int count = 1;
        std::optional<Length> inset;
    };
    std::optional<Dowels> dowels;
    struct Screws {
        Length diameter, length;
        int count = 1;
        std::optional<Length> slot, inset;
        ScrewKind kind = ScrewKind::wood_screw;
        std::optional<Length> cross_dowel{}; ///< diameter of the cross dowel that a bolt pulls on
    };
    std::optional<Screws> screws;
    struct Pegs {
        Length diameter;
        int count = 1;
        std::optional<Length> slot, inset;
    };
    std::optional<Pegs> pegs;
    struct Buttons {
        int count = 1;
        std::optional<Length> slot, inset;
        bool plates = false; ///< figure plates
    };
    std::optional<Buttons> buttons;
    struct DovetailSizes {
        int tails = 1;
        double slope = 8;
    };
    std::optional<DovetailSizes> dovetail;
    /// Slips across the outer corner of a mitre, `depth` measured from the corner.
    struct MitreKeys {
        Length thickness, depth;
        int count = 1;
    };
    std::optional<MitreKeys> keys;
    /// A strip along a mitre, its grain across it, `depth` in either part.
    struct Spline {
        Length thickness, depth;
    };
    std::optional<Spline> spline;
    /// Of a hinge: the first part hangs on the second; the pins lie along the longer side of the faces that look at each other.
    struct Hinges {
        int count = 2;
        std::optional<Length> inset; ///< of the outer ones, from the ends of that side to their middles
        Length gap{};                ///< the two parts may stand so far apart
        std::optional<Side> pin;     ///< the edge of the faces at which the pins lie; none: along their middle
    };
    std::optional<Hinges> hinges;
    Spot spot;
};

/// One [[load]] of the design, resolved to the copies that it stands on.
struct StatedLoad {
    std::string name;
    std::string on;
    Force force{};
    Point direction{0, 0, -1};                  ///< unit vector
    std::optional<std::array<double, 2>> patch; ///< plan size x, y [m]; none: a single point
    Point at{};                                 ///< plan centre (z unused with a patch)
    bool lasting = false;
    std::vector<std::size_t> copies; ///< indices of the copies that carry it
    std::vector<double> shares;      ///< of the force, by area; they sum to 1
    Spot spot;
};

enum class ProofLevel { home, contract, severe };
std::string_view name_of(ProofLevel level);

/// A sag limit as stated: a share of the span or a length.
struct SagLimit {
    std::optional<double> span_over; ///< 300 for span/300
    std::optional<Length> length;
};

struct Limits {
    std::optional<SagLimit> sag;
    std::optional<Length> gap_min, gap_max;
    std::optional<Mass> sitter;
    std::optional<int> seats;
    ProofLevel level = ProofLevel::home;
    bool level_stated = false;
    std::optional<LineLoad> shelf_load;
    std::optional<double> relaxation;
};

struct Piece {
    std::string name;
    LengthUnit units = LengthUnit::millimetre;
    Use use = Use::none;
    std::vector<std::string> carries; ///< part ids or "id #n"
    std::optional<Point> size;        ///< m
    std::vector<std::string> wall;
    Room room;
    std::vector<WoodChoice> woods;
    std::vector<Part> parts;
    std::vector<Copy> copies; ///< grouped by part in the order of `parts`, numbered within
    std::vector<bool> hung;   ///< by copy: hangs on hinges, stands on no floor; empty where there are none
    std::vector<Joint> joints;
    std::vector<StatedLoad> loads;
    Limits limits;
    std::vector<std::string> assumed; ///< defaults taken while reading, one sentence each
    std::vector<std::string> unused;  ///< keys and kinds that no check uses yet, one sentence each

    const Part& part_of(std::size_t copy) const { return parts[copies[copy].part]; }
    bool hangs(std::size_t copy) const { return copy < hung.size() && hung[copy]; }
    /// "slat #3"; just "slat" when there is one copy only and `short_form`.
    std::string label(std::size_t copy, bool short_form = false) const;
    /// Copies that a name means: "slat #3" one, "slat" all of them; empty when there is none such.
    std::vector<std::size_t> copies_named(std::string_view name) const;
    /// What people or goods bear on, as `carries` names it; sorted, each once.
    std::vector<std::size_t> carried_copies() const;
};

} // namespace jointwright
