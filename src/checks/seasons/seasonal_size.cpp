// How wide and thick every part is when made, at the driest and at the dampest.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/size_today.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/ties.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

namespace {

/// Copies of one part side by side along their width.
struct Row {
    int copies = 0;
    double made = 0; ///< from the first side to the last [m]
    double wood = 0; ///< whose movement shows at the ends: all of it where glued edge to edge, else one part's width [m]
    bool glued = false;
};

bool glued_together(const Prepared& prepared, std::size_t a, std::size_t b)
{
    for (const Contact& c : prepared.layout->contacts)
        if (((c.first == a && c.second == b) || (c.first == b && c.second == a)) && has_glue(prepared, c)) return true;
    return false;
}

/// The longest row of a part's copies: a slat field, or boards glued edge to edge. Nothing for fewer than two, or far apart.
std::optional<Row> row_of(const Prepared& prepared, std::size_t index)
{
    const Piece& piece = *prepared.piece;
    const Part& part = piece.parts[index];
    if (part.turn) return std::nullopt;
    const Axis along = part.width_axis();
    const std::size_t k = index_of(along);
    std::vector<std::size_t> copies;
    for (std::size_t i = 0; i < piece.copies.size(); ++i)
        if (piece.copies[i].part == index) copies.push_back(i);
    if (copies.size() < 2) return std::nullopt;
    std::sort(copies.begin(), copies.end(),
              [&](std::size_t a, std::size_t b) { return piece.copies[a].box.lo[k] < piece.copies[b].box.lo[k]; });
    const Box& first = piece.copies[copies.front()].box;
    Row row;
    row.glued = true;
    for (std::size_t i = 0; i < copies.size(); ++i) {
        const Box& box = piece.copies[copies[i]].box;
        if (!in_line(first, box, along)) continue;
        const bool follows = i == 0 || box.lo[k] - piece.copies[copies[i - 1]].box.hi[k] < in_metres(part.width);
        if (!follows) return std::nullopt; // legs at the corners are no row
        if (i > 0) row.glued = row.glued && glued_together(prepared, copies[i - 1], copies[i]);
        ++row.copies;
        row.made = box.hi[k] - first.lo[k];
    }
    if (row.copies < 2) return std::nullopt;
    row.wood = row.glued ? row.made : in_metres(part.width);
    return row;
}

/// Boards of several parts glued edge to edge: a panel of mixed cut or wood.
struct MixedPanel {
    std::vector<std::string> others; ///< ids of the other parts
    double made = 0, dry = 0, damp = 0;
};

std::optional<MixedPanel> mixed_panel_of(const Prepared& prepared, const Ties& ties, std::size_t index)
{
    const Piece& piece = *prepared.piece;
    const Part& part = piece.parts[index];
    if (part.turn) return std::nullopt;
    const Axis along = part.width_axis();
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        const TiedBody& body = ties.body_of(i);
        if (piece.copies[i].part != index || body.copies.size() < 2) continue;
        MixedPanel panel;
        double boards = 0;
        bool moves = true;
        for (const std::size_t copy : body.copies) {
            const std::string& id = piece.part_of(copy).id;
            moves = moves && prepared.state_of(copy).moves();
            boards += ties.box_of(copy).size(along);
            if (id != part.id && std::find(panel.others.begin(), panel.others.end(), id) == panel.others.end())
                panel.others.push_back(id);
        }
        panel.made = body.box.size(along);
        // Boards that lie on each other make no wider panel.
        if (panel.others.empty() || !moves || std::abs(boards - panel.made) > 0.001) continue;
        const SeasonalStrains strain = ties.body_strain(i, along);
        panel.dry = panel.made * strain.dry;
        panel.damp = panel.made * strain.damp;
        return panel;
    }
    return std::nullopt;
}

void add_mixed_panel(const Prepared& prepared, const MixedPanel& panel, Finding& f)
{
    std::string others;
    for (std::size_t i = 0; i < panel.others.size(); ++i)
        others += (i == 0 ? "" : i + 1 == panel.others.size() ? " and " : ", ") + panel.others[i];
    f.headline.pop_back();
    f.headline += fmt::format("; glued edge to edge with {} it makes a width of {} as made, {} at the driest, {} at the dampest.",
                              others, size_words(prepared, panel.made), small_words(prepared, panel.made + panel.dry),
                              small_words(prepared, panel.made + panel.damp));
    f.values.push_back({"panel_made", panel.made, "m"});
    f.values.push_back({"panel_driest", panel.made + panel.dry, "m"});
    f.values.push_back({"panel_dampest", panel.made + panel.damp, "m"});
    f.working.push_back({"Boards glued edge to edge add up, each by its own cut", "ΔW = Σ w ε", "", panel.damp, "m", "geometry"});
}

/// Height of the piece: the upright movement of the parts that stand on each other under its highest point.
std::optional<Finding> height_of(const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    if (piece.copies.size() < 2) return std::nullopt;
    std::size_t at = 0;
    double floor = piece.copies[0].box.lo[2];
    for (std::size_t i = 0; i < piece.copies.size(); ++i) {
        if (piece.copies[i].box.hi[2] > piece.copies[at].box.hi[2] + kTouch) at = i;
        floor = std::min(floor, piece.copies[i].box.lo[2]);
    }
    const std::size_t highest = at;
    const double made = piece.copies[at].box.hi[2] - floor;
    double dry = 0, damp = 0, top = piece.copies[at].box.hi[2];
    std::string chain;
    for (std::size_t steps = 0; steps < piece.copies.size(); ++steps) {
        const PartState& state = prepared.state_of(at);
        const Part& part = piece.part_of(at);
        if (!state.moves() || part.turn) return std::nullopt;
        const auto& bearings = prepared.layout->path.bearings[at];
        const double bottom = bearings.empty() ? piece.copies[at].box.lo[2]
                                               : std::max(piece.copies[at].box.lo[2],
                                                          std::min(top, piece.copies[bearings.front().below].box.hi[2]));
        const double share =
            std::min(top, piece.copies[at].box.hi[2]) - std::min(top, std::max(bottom, piece.copies[at].box.lo[2]));
        dry += share * strain_along(part, state.dry, Axis::z);
        damp += share * strain_along(part, state.damp, Axis::z);
        chain += (chain.empty() ? "" : " on ") + part.id;
        if (bearings.empty()) break;
        top = std::max(bottom, piece.copies[at].box.lo[2]);
        at = bearings.front().below;
    }
    Finding f;
    f.check = "seasonal-size";
    f.subject = piece.name;
    f.headline =
        fmt::format("The whole stands {} high as made, {} at the driest and {} at the dampest ({}).", size_words(prepared, made),
                    small_words(prepared, made + dry), small_words(prepared, made + damp), chain);
    f.values = {{"size_made", made, "m"}, {"size_driest", made + dry, "m"}, {"size_dampest", made + damp, "m"}};
    add_moistures(f, prepared.state_of(highest));
    f.working.push_back({"Upright movement of the parts that stand on each other", "ΔH = Σ h ε", chain, damp, "m", "geometry"});
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> check_seasonal_size(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Ties ties(prepared);
    for (std::size_t i = 0; i < prepared.piece->parts.size(); ++i) {
        const Part& part = prepared.piece->parts[i];
        const PartState& state = prepared.parts[i];
        if (!state.moves()) {
            findings.push_back(cannot_tell(
                "seasonal-size", part.id, fmt::format("How far {} moves cannot be told: {}.", part.id, state.missing_movement()),
                "give [[wood]] properties = { tangential = ..., radial = ... } from a test of your own"));
            continue;
        }
        const double width = in_metres(part.width), thickness = in_metres(part.thickness);
        Finding f;
        f.check = "seasonal-size";
        f.subject = part.id;
        f.headline = fmt::format("{} is {} wide as made at {}: {} at the driest ({}), {} at the dampest ({}).", part.id,
                                 size_words(prepared, width), moisture_words(state.made),
                                 small_words(prepared, width * (1 + state.dry.width)), moisture_words(state.driest),
                                 small_words(prepared, width * (1 + state.damp.width)), moisture_words(state.dampest));
        f.where = state.species;
        f.weight = std::abs(state.dry.width) + std::abs(state.damp.width);
        f.values = {{"size_made", width, "m"},
                    {"size_driest", width * (1 + state.dry.width), "m"},
                    {"size_dampest", width * (1 + state.damp.width), "m"},
                    {"thickness_made", thickness, "m"},
                    {"thickness_driest", thickness * (1 + state.dry.thickness), "m"},
                    {"thickness_dampest", thickness * (1 + state.damp.thickness), "m"},
                    {"length_change_driest", in_metres(part.length) * state.dry.along, "m"},
                    {"length_change_dampest", in_metres(part.length) * state.damp.along, "m"}};
        add_moistures(f, state);
        if (const auto row = row_of(prepared, i)) {
            const double dry = row->wood * state.dry.width, damp = row->wood * state.damp.width;
            f.headline.pop_back();
            f.headline += fmt::format("; {} of them side by side take {} as made, {} at the driest, {} at the dampest.",
                                      row->copies, size_words(prepared, row->made), small_words(prepared, row->made + dry),
                                      small_words(prepared, row->made + damp));
            f.values.push_back({"row_made", row->made, "m"});
            f.values.push_back({"row_driest", row->made + dry, "m"});
            f.values.push_back({"row_dampest", row->made + damp, "m"});
            f.working.push_back({row->glued
                                     ? "Boards glued edge to edge add up"
                                     : "A row whose parts are each fixed at their middle: its ends move by half a part each",
                                 "ΔW = w ε", fmt::format("w = {}", size_words(prepared, row->wood)), damp, "m", "geometry"});
        }
        if (const auto panel = mixed_panel_of(prepared, ties, i)) add_mixed_panel(prepared, *panel, f);
        const MovementLaw& law = std::get<MovementLaw>(state.movement);
        for (WorkingStep& step : movement_working(*prepared.facts, law, state.rings, part.width, state.made, state.driest))
            f.working.push_back(std::move(step));
        for (WorkingStep& step : movement_working(*prepared.facts, law, state.rings, part.width, state.made, state.dampest))
            f.working.push_back(std::move(step));
        add_size_today(f, state, {"width_today", fmt::format("width of {}", part.id), "", "as drawn", width});
        add_size_today(f, state, {"thickness_today", fmt::format("thickness of {}", part.id), "", "as drawn", thickness});
        gather_sources(f);
        findings.push_back(std::move(f));
    }
    if (auto height = height_of(prepared)) findings.push_back(std::move(*height));
    return findings;
}

} // namespace jointwright
