#include "review/cut_list/cut_list.hpp"

#include "measure/write.hpp"
#include "piece/let_ins/joined_solid.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace jointwright {

namespace {

/// Length that tenons add to a copy beyond what is drawn.
double added_tenons(const Piece& piece, const std::vector<Contact>& contacts, std::size_t copy)
{
    double more = 0;
    for (const Contact& c : contacts) {
        if (c.first != copy || !c.joint || c.shared) continue;
        const Joint& joint = piece.joints[*c.joint];
        if (joint.kind == JointKind::tenon && joint.tenon && !joint.tenon->loose) more += in_metres(joint.tenon->length);
    }
    return more;
}

/// A recess as it is cut in the second part: how deep, and its two sides on the face.
struct Recess {
    double deep = 0, width = 0, length = 0; ///< m; clearance not yet in the width
    bool along_grain = false;               ///< its length runs along the grain of the part that is cut
};

std::optional<Recess> recess_of(const Piece& piece, const Contact& contact)
{
    if (!contact.shared || piece.part_of(contact.first).turn || piece.part_of(contact.second).turn) return std::nullopt;
    const Point way = way_apart(piece, contact);
    std::optional<Axis> into;
    for (const Axis a : {Axis::x, Axis::y, Axis::z})
        if (std::abs(way[index_of(a)]) > 0.9) into = a;
    if (!into) return std::nullopt;
    const Axis grain = piece.part_of(contact.second).grain;
    Recess recess;
    recess.deep = contact.shared->size(*into);
    const Axis a = *into == Axis::x ? Axis::y : Axis::x, b = third_axis(*into, a);
    // It runs where it goes right through the part; else it is as long as its longer side.
    const auto through = [&](Axis k) { return piece.copies[contact.second].box.size(k) - contact.shared->size(k) < kTouch; };
    const bool a_longer = contact.shared->size(a) >= contact.shared->size(b);
    const Axis run = through(a) != through(b) ? (through(a) ? a : b) : (a_longer ? a : b);
    recess.length = contact.shared->size(run);
    recess.width = contact.shared->size(run == a ? b : a);
    recess.along_grain = run == grain;
    return recess;
}

std::string counted(int count, std::string_view one) { return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s"); }

/// Writes the line of one joint; knows its first contact and how often it occurs.
class JointWriter {
public:
    JointWriter(const Piece& piece, const Contact& contact, int places, const std::vector<Finding>& findings, LengthUnit units)
        : piece_(piece), contact_(contact), joint_(piece.joints[*contact.joint]), places_(places), units_(units)
    {
        clearance_ = in_metres(joint_.clearance);
        for (const Finding& f : findings) {
            if (f.check != "bind" || f.subject != first() + " / " + second()) continue;
            closed_end_ = finding_value(f, "room_each_end_today");
            const auto today = finding_value(f, "clearance_today");
            // As drawn where that is well.
            if (today) clearance_ = f.verdict == Verdict::pass ? std::max(clearance_, *today) : *today;
        }
    }

    /// Empty for joints that need no cut.
    std::string line() const
    {
        switch (joint_.kind) {
        case JointKind::tenon: return tenon();
        case JointKind::housing:
        case JointKind::groove:
        case JointKind::sliding_dovetail: return recess();
        case JointKind::lap: return lap();
        case JointKind::bridle: return bridle();
        case JointKind::dovetail: return dovetail();
        case JointKind::mitre: return mitre();
        case JointKind::dowel: return dowel();
        case JointKind::screws: return screws();
        case JointKind::buttons: return buttons();
        case JointKind::hinge: return {}; // let in by the leaf in hand
        case JointKind::edge:
        case JointKind::face:
        case JointKind::butt: return contact_.shared ? fmt::format("{}: {}", head("fit"), scribe()) : "";
        }
        return {};
    }

private:
    /// The angles of the two cuts to the edges of their parts, where the corner is square.
    std::string mitre_cuts() const
    {
        const std::string line = fmt::format("{}: cut both along the diagonal of the corner", head("mitre"));
        const Part &a = piece_.part_of(contact_.first), &b = piece_.part_of(contact_.second);
        if (!contact_.shared || a.turn || b.turn || a.grain == b.grain) return line;
        const double along_a = contact_.shared->size(a.grain), along_b = contact_.shared->size(b.grain);
        const std::string of_first = write_angle(radians(std::atan2(along_b, along_a))),
                          of_second = write_angle(radians(std::atan2(along_a, along_b)));
        if (of_first == of_second) return fmt::format("{}, at {}", line, of_first);
        return fmt::format("{}, {} at {} and {} at {} to its edge", line, first(), of_first, second(), of_second);
    }

    const std::string& first() const { return piece_.part_of(contact_.first).id; }
    const std::string& second() const { return piece_.part_of(contact_.second).id; }
    std::string size(double m) const { return write_length(metres(m), units_); }
    std::string size(Length l) const { return write_length(l, units_); }
    double loose(double m) const { return m + 2 * clearance_; }
    std::string head(std::string_view what) const
    {
        return fmt::format("{} / {}, {} ({} {})", first(), second(), what, places_, places_ == 1 ? "place" : "places");
    }
    std::string scribe() const { return fmt::format("{} is cut to fit {}; mark it from the piece itself", first(), second()); }
    std::string clearance_words() const
    {
        if (!(clearance_ > 0)) return "";
        return fmt::format(" ({} of clearance on each side is in it)", write_small_length(metres(clearance_), units_));
    }

    std::string tenon() const
    {
        if (!joint_.tenon) return {};
        const double width = in_metres(joint_.tenon->width), thickness = in_metres(joint_.tenon->thickness);
        if (joint_.tenon->loose)
            return fmt::format("{}: {} long, {} wide, {} thick, half of its length in a mortise in {} and half in one in {}{}",
                               head("loose tenon"), size(2 * in_metres(joint_.tenon->length)), size(width), size(thickness),
                               first(), second(), clearance_words());
        // Room for the seasons goes on the tenon's own width, not on top of a clearance.
        const bool more = closed_end_ && *closed_end_ > clearance_ + kTouch;
        std::string line =
            fmt::format("{}: {} long, {} wide, {} thick; mortise in {} {} wide, {}, at least {} deep{}", head("tenon"),
                        size(joint_.tenon->length), size(width), size(thickness), second(), size(loose(thickness)),
                        more ? fmt::format("{} long and {} more at each closed end", size(width),
                                           write_length_up(metres(*closed_end_), units_))
                             : fmt::format("{} long", size(loose(width))),
                        size(joint_.tenon->length), clearance_words());
        if (joint_.tenon->mitred) line += "; its end cut at 45° where it meets the other tenon";
        if (joint_.pegs)
            line += fmt::format("; {} of {}{}", counted(joint_.pegs->count, "peg"), size(joint_.pegs->diameter),
                                slot_words(joint_.pegs->slot));
        return line;
    }

    std::string recess() const
    {
        const auto cut = recess_of(piece_, contact_);
        if (!cut) return contact_.shared ? fmt::format("{}: {}", head(name_of(joint_.kind)), scribe()) : "";
        const double deep = joint_.groove_depth ? in_metres(*joint_.groove_depth) : cut->deep;
        std::string line =
            fmt::format("{}: in {} {} deep, {} wide, {} long {} the grain{}", head(name_of(joint_.kind)), second(), size(deep),
                        size(loose(cut->width)), size(cut->length), cut->along_grain ? "along" : "across", clearance_words());
        if (deep > cut->deep + kTouch) line += fmt::format("; {} goes {} into it", first(), size(cut->deep));
        return line;
    }

    std::string lap() const
    {
        const auto cut = recess_of(piece_, contact_);
        if (!cut) return fmt::format("{}: {}", head("lap"), scribe());
        const double taken = joint_.lap_first ? in_metres(*joint_.lap_first) : cut->deep / 2;
        return fmt::format("{}: {} out of {} and {} out of {}, over {} × {}", head("lap"), size(taken), first(),
                           size(cut->deep - taken), second(), size(cut->width), size(cut->length));
    }

    std::string bridle() const
    {
        if (!contact_.shared) return {};
        const double whole = contact_.shared->size(piece_.part_of(contact_.first).face);
        const double thickness = joint_.bridle_thickness ? in_metres(*joint_.bridle_thickness) : whole / 3;
        return fmt::format("{}: tenon of {} {} thick, {} long; slot in {} {} wide{}", head("bridle"), first(), size(thickness),
                           size(contact_.shared->size(piece_.part_of(contact_.first).grain)), second(), size(loose(thickness)),
                           clearance_words());
    }

    std::string dovetail() const
    {
        if (!contact_.shared || !joint_.dovetail) return {};
        if (joint_.dovetail->slope == 0)
            return fmt::format("{}: {} on {}, {} long", head("comb joint"), counted(joint_.dovetail->tails, "finger"), first(),
                               size(contact_.shared->size(piece_.part_of(contact_.first).grain)));
        return fmt::format("{}: {} on {}, slope 1 in {}, {} long", head("dovetail"), counted(joint_.dovetail->tails, "tail"),
                           first(), write_number(joint_.dovetail->slope),
                           size(contact_.shared->size(piece_.part_of(contact_.first).grain)));
    }

    std::string mitre() const
    {
        std::string line = mitre_cuts();
        if (joint_.keys)
            line += fmt::format("; {} {} thick, {} deep from the corner, its grain across the mitre",
                                counted(joint_.keys->count, "key"), size(joint_.keys->thickness), size(joint_.keys->depth));
        if (joint_.spline)
            line += fmt::format("; a spline {} thick, {} deep in either part, its grain across the mitre",
                                size(joint_.spline->thickness), size(joint_.spline->depth));
        if (joint_.dowels)
            line += fmt::format("; {} {} × {}", counted(joint_.dowels->count, "dowel"), size(joint_.dowels->diameter),
                                size(joint_.dowels->length));
        return line;
    }

    std::string dowel() const
    {
        if (!joint_.dowels) return {};
        return fmt::format("{}: {} {} × {} at each place, half of the length in each part", head("dowels"),
                           counted(joint_.dowels->count, "dowel"), size(joint_.dowels->diameter), size(joint_.dowels->length));
    }

    std::string slot_words(const std::optional<Length>& slot) const
    {
        return slot ? fmt::format(", slotted for {} of travel across the grain", size(*slot)) : "";
    }

    std::string screws() const
    {
        if (!joint_.screws) return {};
        return fmt::format("{}: {} {} × {} at each place{}", head("screws"),
                           counted(joint_.screws->count, name_of(joint_.screws->kind)), size(joint_.screws->diameter),
                           size(joint_.screws->length), slot_words(joint_.screws->slot));
    }

    std::string buttons() const
    {
        if (!joint_.buttons) return {};
        return fmt::format("{}: {} at each place{}", head("buttons"),
                           counted(joint_.buttons->count, joint_.buttons->plates ? "figure plate" : "button"),
                           slot_words(joint_.buttons->slot));
    }

    const Piece& piece_;
    const Contact& contact_;
    const Joint& joint_;
    int places_;
    LengthUnit units_;
    double clearance_ = 0;             ///< on each side, to cut today [m]
    std::optional<double> closed_end_; ///< room at each closed end of a mortise [m]
};

} // namespace

std::vector<CutPart> cut_parts_of(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<CutPart> parts;
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        CutPart cut;
        cut.id = part.id;
        for (std::size_t i = 0; i < piece.copies.size(); ++i) {
            if (piece.copies[i].part != p) continue;
            ++cut.copies;
            cut.tenons_m = std::max(cut.tenons_m, added_tenons(piece, contacts, i));
        }
        cut.shoulders_m = in_metres(part.length);
        cut.length_m = cut.shoulders_m + cut.tenons_m;
        cut.width_m = in_metres(part.width);
        cut.thickness_m = in_metres(part.thickness);
        if (part.glued_up) cut.boards = part.glued_up->boards;
        cut.tapered = part.taper.has_value();
        cut.rounded_m = part.round_over ? in_metres(*part.round_over) : 0;
        parts.push_back(std::move(cut));
    }
    return parts;
}

std::vector<std::string> cut_part_lines(const std::vector<CutPart>& parts, LengthUnit units)
{
    std::vector<std::string> lines;
    for (const CutPart& part : parts) {
        const auto size = [&](double m) { return write_length(metres(m), units); };
        std::string line = fmt::format("{} × {}: {} long, {} wide, {} thick", part.copies, part.id, size(part.length_m),
                                       size(part.width_m), size(part.thickness_m));
        if (part.tenons_m > 0)
            line += fmt::format(" ({} between shoulders and {} of tenons)", size(part.shoulders_m), size(part.tenons_m));
        if (part.boards > 1)
            line += fmt::format(", glued up from {} boards of {}", part.boards, size(part.width_m / part.boards));
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> cut_joint_lines(const Piece& piece, const std::vector<Contact>& contacts,
                                         const std::vector<Finding>& findings, LengthUnit units)
{
    std::vector<std::string> lines;
    for (std::size_t j = 0; j < piece.joints.size(); ++j) {
        const Contact* example = nullptr;
        int places = 0;
        for (const Contact& c : contacts) {
            if (c.joint != j) continue;
            if (!example) example = &c;
            ++places;
        }
        if (!example) continue;
        std::string line = JointWriter(piece, *example, places, findings, units).line();
        if (!line.empty()) lines.push_back(std::move(line));
    }
    return lines;
}

void list_cuts(ReportContent& content, const Prepared& prepared)
{
    const Piece& piece = *prepared.piece;
    const std::vector<Contact>& contacts = prepared.layout->contacts;
    content.cut_parts = cut_parts_of(piece, contacts);
    const auto add = [&](const char* heading, std::vector<std::string> lines) {
        if (lines.empty()) return;
        content.cut_groups.push_back({heading, content.cut_today.size()});
        for (std::string& line : lines) content.cut_today.push_back(std::move(line));
    };
    add("Blanks", cut_part_lines(content.cut_parts, content.units));
    add("Joints", cut_joint_lines(piece, contacts, content.findings, content.units));
    add("Gaps, room and slots", cut_fit_lines(content.findings, content.units));
    add("Glue-up", glue_up_lines(prepared, content.findings, content.units));
}

} // namespace jointwright
