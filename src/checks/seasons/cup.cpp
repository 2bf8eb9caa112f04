// Boards whose rings run along their wide face: shrinking more around the rings than across them makes them hollow.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/flatness.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/held_flat.hpp"
#include "wood/distortion.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

constexpr double kLeastUnlikeSides = 2; // width over thickness of a board; squarer sections turn to diamonds instead
constexpr double kMostUpright = 75;     // degrees between rings and face: beyond, less than 2 % of the flat-sawn cup is left

/// One board of a part, as its end grain stands.
struct Board {
    EndGrain grain;
    double thickness = 0; ///< m
    bool radius_stated = false;
    bool on_edge = false; ///< the part's thickness is the larger side
    int boards = 1;       ///< side by side in the part
};

/// Nothing for sections that do not cup: nearly square ones, thin layers, upright rings, staves glued face to face.
std::optional<Board> board_of(const Prepared& prepared, std::size_t index)
{
    const Part& part = prepared.piece->parts[index];
    const PartState& state = prepared.parts[index];
    Board board;
    board.boards = part.glued_up ? part.glued_up->boards : 1;
    const double width = in_metres(part.width) / board.boards, thickness = in_metres(part.thickness);
    board.on_edge = width < thickness;
    if (board.on_edge && part.glued_up) return std::nullopt;
    board.thickness = std::min(width, thickness);
    const double wide = std::max(width, thickness);
    if (wide < kLeastUnlikeSides * board.thickness * (1 - 1e-9) ||
        board.thickness <= prepared.facts->number("veneer_thickness").value)
        return std::nullopt;
    board.grain.rings = board.on_edge ? degrees(90) - state.rings : state.rings;
    if (in_degrees(board.grain.rings) > kMostUpright) return std::nullopt;
    board.grain.width = metres(wide);
    board.radius_stated = part.ring_radius.has_value();
    // Without a stated radius a board with slanting rings is taken to lie beside the pith, not over it.
    const double usual =
        std::max(prepared.facts->number("ring_radius_default").value, wide / 2 * std::sin(board.grain.rings.value()));
    board.grain.ring_radius = part.ring_radius.value_or(metres(usual));
    return board;
}

Side opposite(Side side)
{
    switch (side) {
    case Side::left: return Side::right;
    case Side::right: return Side::left;
    case Side::front: return Side::back;
    case Side::back: return Side::front;
    case Side::bottom: return Side::top;
    case Side::top: return Side::bottom;
    }
    return side;
}

/// "hollow on its top, the bark side" or, where the design leaves it open, "hollow on its bark side".
std::string hollow_words(const Part& part, const Copy& copy, double depth)
{
    const char* wood_side = depth >= 0 ? "bark side" : "pith side";
    if (!part.bark_side) return fmt::format("hollow on its {}", wood_side);
    Side side = *part.bark_side;
    if (copy.mirrored[index_of(axis_of(side))]) side = opposite(side);
    return fmt::format("hollow on its {}, the {}", name_of(depth >= 0 ? side : opposite(side)), wood_side);
}

struct SeasonCups {
    Cup dry, damp;
    RingStrain dry_strain, damp_strain;
};

/// Widest board that stays within a depth, by the curvature at mid-width, which is on the safe side [m].
double widest_within(const EndGrain& grain, const RingStrain& strain, double depth)
{
    const double cup = std::abs(in_metres(cup_by_curvature(grain, strain)));
    return cup > 0 ? in_metres(grain.width) * std::sqrt(depth / cup) : in_metres(grain.width);
}

Working working_of(const Prepared& prepared, const PartState& state, const Board& board, const SeasonCups& cups,
                   const WorseSeason& worse, const Datum<double>& limit, const Datum<double>& fail)
{
    const RingStrain& strain = worse.dry ? cups.dry_strain : cups.damp_strain;
    const Cup& cup = worse.dry ? cups.dry : cups.damp;
    Working w = ring_strain_working(*prepared.facts, std::get<MovementLaw>(state.movement), state.made, worse.moisture);
    const Datum<double>& usual = prepared.facts->number("ring_radius_default");
    const double r = in_metres(board.grain.ring_radius);
    if (board.radius_stated)
        w.push_back({"Radius of the growth rings at mid-width, as stated", "r", "", r, "m", "the design's ring_radius"});
    else
        w.push_back({"Radius of the growth rings at mid-width is not stated: the default is taken", "r",
                     r > usual.value ? "more than the default, so that the board lies beside the pith" : "", r, "m",
                     usual.cite.text()});
    w.push_back(
        {"Cup: every point of the end grain moves by its radius and its angle; positive hollow on the bark side",
         "(ρ, θ) → (ρ (1 + ε_R), θ (1 + ε_T)/(1 + ε_R))",
         fmt::format("w = {}, φ = {}", size_words(prepared, in_metres(board.grain.width)), write_angle(board.grain.rings)),
         in_metres(cup.depth), "m", prepared.facts->source("mechanics")});
    w.push_back({"The same by the curvature at mid-width alone, too much for wide boards", "κ w²/8, κ = 2 (ε_R − ε_T) cos³φ/r",
                 "", in_metres(cup_by_curvature(board.grain, strain)), "m", prepared.facts->source("mechanics")});
    w.push_back({"Cup that stays unnoticed", "depth ≤ limit", "", limit.value, "m", limit.cite.text()});
    w.push_back({"Cup that spoils the board", "depth > limit", "", fail.value, "m", fail.cite.text()});
    return w;
}

Finding judge(const Prepared& prepared, std::size_t index, const Board& board, std::size_t copy, const Holders& holders)
{
    const Part& part = prepared.piece->parts[index];
    const PartState& state = prepared.parts[index];
    const MovementLaw& law = std::get<MovementLaw>(state.movement);
    SeasonCups cups;
    cups.dry_strain = ring_strain(law, state.made, state.driest);
    cups.damp_strain = ring_strain(law, state.made, state.dampest);
    cups.dry = cup_of(board.grain, cups.dry_strain);
    cups.damp = cup_of(board.grain, cups.damp_strain);
    const double dry = std::abs(in_metres(cups.dry.depth)), damp = std::abs(in_metres(cups.damp.depth));
    const WorseSeason worse = worse_season(state, dry, damp);
    const double depth = in_metres(worse.dry ? cups.dry.depth : cups.damp.depth);
    const Datum<double>& limit = flatness_limit(prepared, index);
    const Datum<double>& fail = prepared.facts->number("flatness_fail");
    const bool held = holders.keep_flat();

    Finding f;
    f.check = "cup";
    f.subject = part.id;
    f.weight = worse.amount;
    f.where = fmt::format("{}, {}, rings at {} to its wide face{}", prepared.piece->label(copy, true), state.species,
                          write_angle(board.grain.rings), part.bark_side ? "" : ", either way up");
    f.about.copies = {copy};
    const std::string whole = board.boards > 1 ? fmt::format("Each of the {} boards of {}", board.boards, part.id) : part.id;
    const std::string facts = fmt::format("{} over its {} {}, {}", small_words(prepared, worse.amount),
                                          size_words(prepared, in_metres(board.grain.width)), worse.words(),
                                          hollow_words(part, prepared.piece->copies[copy], depth));
    const double widest = widest_within(board.grain, worse.dry ? cups.dry_strain : cups.damp_strain, limit.value);
    const std::string better =
        fmt::format("use quarter-sawn stock or boards no wider than {}, or make it nearer {}, the middle of the room's range",
                    size_words(prepared, shop_size_below(prepared, widest)),
                    moisture_words(MoistureContent::percent((state.driest.percent() + state.dampest.percent()) / 2)));
    if (held) {
        // A held board does not cup: what is left is how hard it pulls at what holds it.
        f.verdict = worse.amount > fail.value ? Verdict::warn : Verdict::pass;
        f.utilisation = worse.amount / fail.value;
        f.headline = fmt::format("{} is held flat by {}; free it would cup {}.", whole, holders.words(*prepared.piece), facts);
        if (f.verdict == Verdict::warn) f.remedy = better;
    } else {
        f.verdict = worse.amount > fail.value ? Verdict::fail : worse.amount > limit.value ? Verdict::warn : Verdict::pass;
        f.utilisation = worse.amount / limit.value;
        f.fails_from = fail.value / limit.value;
        f.headline = fmt::format("{} cups {}.", whole, facts);
        if (f.verdict != Verdict::pass)
            f.remedy = better + ", or hold it flat by two battens in slotted screws, by buttons on a frame or by housed ends";
    }
    if (board.boards > 1 && part.bark_side)
        f.headline += " With the bark side of all boards the same way the whole bows as one; turn every other board over.";
    f.values = {{"cup_driest", dry, "m"},
                {"cup_dampest", damp, "m"},
                {"limit", held ? fail.value : limit.value, "m"},
                {"board_width", in_metres(board.grain.width), "m"},
                {"ring_radius", in_metres(board.grain.ring_radius), "m"}};
    f.working = working_of(prepared, state, board, cups, worse, limit, fail);
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_cup(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    const std::vector<Holders> holders = holders_across(prepared);
    std::vector<Finding> findings;
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const auto board = board_of(prepared, p);
        if (!board) continue;
        if (!prepared.parts[p].moves()) {
            findings.push_back(cannot_tell(
                "cup", piece.parts[p].id,
                fmt::format("Whether {} cups cannot be told: {}.", piece.parts[p].id, prepared.parts[p].missing_movement()),
                "give [[wood]] properties = { tangential = ..., radial = ... } from a test of your own"));
            continue;
        }
        // Copies are alike but for what holds them: the first that nothing holds stands for all.
        std::optional<std::size_t> worst;
        for (std::size_t i = 0; i < piece.copies.size(); ++i)
            if (piece.copies[i].part == p && (!worst || (holders[*worst].keep_flat() && !holders[i].keep_flat()))) worst = i;
        if (worst) findings.push_back(judge(prepared, p, *board, *worst, holders[*worst]));
    }
    return findings;
}

} // namespace jointwright
