#include "piece/model/piece.hpp"

#include "piece/model/part_name.hpp"

#include <fmt/core.h>

#include <set>

namespace jointwright {

std::string_view name_of(Use use)
{
    switch (use) {
    case Use::seat: return "seat";
    case Use::table: return "table";
    case Use::shelf: return "shelf";
    case Use::cabinet: return "cabinet";
    case Use::panel: return "panel";
    case Use::none: return "none";
    case Use::door: return "door";
    case Use::gate: return "gate";
    }
    return "none";
}

std::string_view name_of(ScrewKind kind)
{
    switch (kind) {
    case ScrewKind::wood_screw: return "wood screw";
    case ScrewKind::pocket_screw: return "pocket screw";
    case ScrewKind::lag_screw: return "lag screw";
    case ScrewKind::nail: return "nail";
    case ScrewKind::bolt: return "bolt";
    }
    return "wood screw";
}

bool bears_something(Use use) { return use == Use::seat || use == Use::table || use == Use::shelf || use == Use::cabinet; }

std::string_view name_of(JointKind kind)
{
    switch (kind) {
    case JointKind::edge: return "edge";
    case JointKind::face: return "face";
    case JointKind::butt: return "butt";
    case JointKind::screws: return "screws";
    case JointKind::buttons: return "buttons";
    case JointKind::dowel: return "dowel";
    case JointKind::tenon: return "tenon";
    case JointKind::housing: return "housing";
    case JointKind::groove: return "groove";
    case JointKind::sliding_dovetail: return "sliding dovetail";
    case JointKind::bridle: return "bridle";
    case JointKind::dovetail: return "dovetail";
    case JointKind::lap: return "lap";
    case JointKind::mitre: return "mitre";
    case JointKind::hinge: return "hinge";
    }
    return "face";
}

std::string_view name_of(ProofLevel level)
{
    switch (level) {
    case ProofLevel::home: return "home";
    case ProofLevel::contract: return "contract";
    case ProofLevel::severe: return "severe";
    }
    return "home";
}

std::string Piece::label(std::size_t copy, bool short_form) const
{
    const Copy& named = copies[copy];
    const std::string& id = parts[named.part].id;
    if (short_form) {
        // Copies stand grouped by part: a second one would be a neighbour.
        const bool alone = (copy == 0 || copies[copy - 1].part != named.part) &&
                           (copy + 1 == copies.size() || copies[copy + 1].part != named.part);
        if (alone) return id;
    }
    return fmt::format("{} #{}", id, named.number);
}

std::vector<std::size_t> Piece::copies_named(std::string_view name) const
{
    const PartName wanted = part_name(name);
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < copies.size(); ++i) {
        if (parts[copies[i].part].id != wanted.id) continue;
        if (wanted.number && copies[i].number != *wanted.number) continue;
        found.push_back(i);
    }
    return found;
}

std::vector<std::size_t> Piece::carried_copies() const
{
    std::set<std::size_t> carried;
    for (const std::string& name : carries)
        for (const std::size_t i : copies_named(name)) carried.insert(i);
    return {carried.begin(), carried.end()};
}

} // namespace jointwright
