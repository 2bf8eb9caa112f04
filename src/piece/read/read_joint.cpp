// [[joint]]: which parts, of which kind, with which glue.

#include "piece/read/readers.hpp"

#include "measure/text.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

constexpr std::size_t kMostJoints = 1000; // each is matched with every near pair of copies

const std::vector<std::string> kKinds{"edge",   "face",     "butt",    "screws", "buttons",
                                      "dowel",  "tenon",    "housing", "groove", "sliding dovetail",
                                      "bridle", "dovetail", "lap",     "mitre",  "hinge"};

bool read_between(DesignTable& table, const PartIds& ids, Joint& joint)
{
    Reading& reading = table.reading();
    const DesignValue* between = table.must("between", R"(["slat", "long rail"])");
    if (between == nullptr) return false;
    joint.spot = between->spot;
    if (!is_kind(reading, *between, "between", DesignValue::Kind::list, R"(["slat", "long rail"])")) return false;
    if (between->items.size() != 2) {
        reading.fault(between->spot, "wrong-type",
                      fmt::format("between names {}; a joint is between two",
                                  between->items.size() == 1 ? "one part" : fmt::format("{} parts", between->items.size())),
                      reading.fixed(*between, R"(["slat", "long rail"])"));
        return false;
    }
    const auto first = as_part_name(reading, between->items[0], "between", ids);
    const auto second = as_part_name(reading, between->items[1], "between", ids);
    if (!first || !second) return false;
    joint.first = *first;
    joint.second = *second;
    table.rename(fmt::format("joint {} / {}", in_quotes(joint.first), in_quotes(joint.second)));
    return true;
}

bool read_kind(DesignTable& table, Joint& joint)
{
    const DesignValue* kind = table.must("kind", R"("housing")");
    if (kind == nullptr) return false;
    const auto choice = as_choice(table.reading(), *kind, "kind", "kind of joint", kKinds);
    if (choice) joint.kind = static_cast<JointKind>(*choice);
    return choice.has_value();
}

} // namespace

void read_joints(Reading& reading, const DesignValue& list, const PartIds& ids, Piece& piece)
{
    const auto tables = tables_of(reading, list, "joint");
    if (tables.size() > kMostJoints) {
        reading.fault(tables[kMostJoints]->spot, "too-large",
                      fmt::format("the design has {} joints; it may have {}", tables.size(), kMostJoints), {},
                      "one joint between two part ids acts at every pair of their copies that touch");
        return;
    }
    for (const DesignValue* value : tables) {
        DesignTable table(reading, *value, "[[joint]]");
        Joint joint;
        joint.spot = value->spot;
        const bool named = read_between(table, ids, joint);
        const bool kind_known = read_kind(table, joint);
        read_joint_sizes(table, joint, kind_known);
        table.finish();
        if (named && kind_known) piece.joints.push_back(std::move(joint));
    }
}

} // namespace jointwright
