#include "piece/contacts/tenon_faults.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <cmath>

namespace jointwright {

namespace {

Fault fault_at(const Joint& joint, std::string id, std::string says, std::string fix, std::string note)
{
    Fault f;
    f.id = std::move(id);
    f.spot = joint.spot;
    f.says = std::move(says);
    f.fix = std::move(fix);
    f.note = std::move(note);
    return f;
}

/// The line of a tenon with another length, to paste.
std::string tenon_line(const Piece& piece, const Joint::Tenon& tenon, Length length)
{
    // Bare numbers to the last digit: rounded to 1/64 in they would contradict the drawing again.
    const auto size = [&](Length l) { return write_number(number_in(l, piece.units), 7); };
    return fmt::format("tenon = {{ length = {}, width = {}, thickness = {}{}{} }}", size(length), size(tenon.width),
                       size(tenon.thickness), tenon.loose ? ", loose = true" : "", tenon.mitred ? ", mitred = true" : "");
}

/// The axis that the shoulder looks along; nothing for slanting ones.
std::optional<Axis> entry_of(const Contact& contact)
{
    for (const Patch& p : contact.patches)
        if (p.role == Patch::Role::shoulder)
            for (const Axis axis : {Axis::x, Axis::y, Axis::z})
                if (std::abs(p.normal[index_of(axis)]) > 0.9) return axis;
    return std::nullopt;
}

/// Drawn in by one amount, stated by another: which of the two is meant cannot be told.
std::optional<Fault> contradiction(const Piece& piece, const Contact& contact, Axis entry)
{
    const Joint& joint = piece.joints[*contact.joint];
    const Part &rail = piece.part_of(contact.first), &post = piece.part_of(contact.second);
    // The wedge that a tilted or tapered part shares with what it only meets is not the depth of its tenon.
    if (!contact.shared || rail.turn || post.turn) return std::nullopt;
    const double drawn = contact.shared->size(entry), length = in_metres(joint.tenon->length);
    const std::string depth = write_length(metres(drawn), piece.units), stated = write_length(joint.tenon->length, piece.units);
    if (joint.tenon->loose)
        return fault_at(joint, "one-too-many",
                        fmt::format("{} is drawn {} into {}, but its tenon is a loose one, {} into either part",
                                    piece.label(contact.first), depth, piece.label(contact.second), stated),
                        "",
                        fmt::format("parts with a loose tenon are drawn touching: draw {} up to the face of {}, {} shorter",
                                    rail.id, post.id, depth));
    if (std::abs(drawn - length) <= kTouch || (post.taper && length < drawn)) return std::nullopt;
    return fault_at(joint, "one-too-many",
                    fmt::format("{} is drawn {} into {}, which makes its tenon {} long; tenon says {}",
                                piece.label(contact.first), depth, piece.label(contact.second), depth, stated),
                    tenon_line(piece, *joint.tenon, metres(drawn)),
                    fmt::format("or draw {} up to the face of {}, {} shorter at this end: then the tenon of {} comes on top",
                                rail.id, post.id, depth, stated));
}

} // namespace

std::optional<Fault> tenon_fault(const Piece& piece, const Contact& contact)
{
    const Joint& joint = piece.joints[*contact.joint];
    if (joint.kind != JointKind::tenon || !joint.tenon) return std::nullopt;
    const Part &rail = piece.part_of(contact.first), &post = piece.part_of(contact.second);
    if (in_metres(joint.tenon->width) > in_metres(rail.width) + kTouch ||
        in_metres(joint.tenon->thickness) > in_metres(rail.thickness) + kTouch)
        return fault_at(joint, "out-of-range",
                        fmt::format("the tenon of {} is {} x {}, larger than the section it is cut from, {} x {}", rail.id,
                                    write_length(joint.tenon->width, piece.units),
                                    write_length(joint.tenon->thickness, piece.units), write_length(rail.width, piece.units),
                                    write_length(rail.thickness, piece.units)),
                        "", "a tenon is cut from the end of the first part and goes into the second");
    const auto entry = entry_of(contact);
    if (!entry) return std::nullopt;
    if (auto fault = contradiction(piece, contact, *entry)) return fault;
    const double deep = piece.copies[contact.second].box.size(*entry);
    if (post.turn || in_metres(joint.tenon->length) <= deep + kTouch) return std::nullopt;
    return fault_at(joint, "out-of-range",
                    fmt::format("the tenon of {} is {} long, longer than {} is deep there, {}", rail.id,
                                write_length(joint.tenon->length, piece.units), post.id, write_length(metres(deep), piece.units)),
                    tenon_line(piece, *joint.tenon, metres(deep)) + "   # a through tenon, flush",
                    "a tenon is cut from the end of the first part and goes into the second");
}

} // namespace jointwright
