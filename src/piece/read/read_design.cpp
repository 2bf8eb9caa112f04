#include "piece/read/read_design.hpp"

#include "piece/contacts/contact.hpp"
#include "piece/contacts/hung.hpp"
#include "piece/read/read_pattern.hpp"
#include "piece/read/readers.hpp"

#include <fmt/core.h>

namespace jointwright {

namespace {

constexpr double kMostInAll = 10000; // parts times combinations, as many as one combination may have parts
constexpr double kMostCombinations = 64;

constexpr std::string_view kPieceLines =
    "[piece]\nname = \"Cloakroom boot bench\"\nunits = \"in\"\nuse = \"seat\"\ncarries = [\"slat\"]";
constexpr std::string_view kRoomLines = "[room]\nair = \"heated, cold winters\"\nmoisture_at_glue_up = 8";
constexpr std::string_view kWoodLines = "[[wood]]\nid = \"frame\"\nspecies = \"white oak\"";
constexpr std::string_view kPartLines = "[[part]]\nid = \"slat\"\nwood = \"frame\"\nlength = 14\nwidth = 2\nthickness = "
                                        "\"3/4\"\ngrain = \"y\"\nface = \"z\"\nat = [0, 0, 0]";

Fault empty_fault()
{
    return {{},
            "missing-key",
            "the design is empty; it starts with [piece], [room], [[wood]] and [[part]]",
            std::string(kPieceLines),
            "`jointwright new` prints a starter to fill in"};
}

/// The steps of reading one design, in the order in which they need each other.
class DesignReader {
public:
    DesignReader(DesignValue root, std::string_view text, const Facts& facts)
        : reading_(text, facts), written_(std::move(root)), pattern_(write_out_pattern(reading_, written_, text)),
          root_(reading_, written_, "the design")
    {
        root_.may("pattern"); // a key of the design, though it has been replaced by what it makes
    }

    DesignRead read()
    {
        const DesignValue* head = section("piece", kPieceLines);
        const DesignValue* room = section("room", kRoomLines);
        std::optional<DesignTable> head_table;
        if (head != nullptr) read_piece_head(head_table.emplace(reading_, *head, "[piece]"), piece_);
        if (room != nullptr) {
            DesignTable table(reading_, *room, "[room]");
            read_room(table, piece_.room);
        }
        if (const DesignValue* woods = list("wood", kWoodLines)) read_woods(reading_, *woods, piece_);
        if (!pattern_.sound) forget_size();
        read_what_is_made(head_table);
        if (head_table) head_table->finish();
        read_stated_limits();
        root_.finish();
        check_combinations();
        return finished();
    }

private:
    /// Parts, joints, and what names parts. Where a pattern is not known, the ids that it would make are not known either.
    void read_what_is_made(std::optional<DesignTable>& head)
    {
        const bool ids_known = pattern_.written_out;
        PartIds ids;
        reading_.about_shapes = true;
        const DesignValue* parts = ids_known ? list("part", kPartLines) : root_.may("part");
        if (parts != nullptr) ids = read_parts(reading_, *parts, piece_);
        const DesignValue* joints = root_.may("joint");
        if (joints != nullptr && ids_known) read_joints(reading_, *joints, ids, piece_);
        reading_.about_shapes = false;
        if (head && ids_known) read_piece_names(*head, ids, piece_);
        if (head && !ids_known)
            for (const std::string_view key : {"carries", "wall"}) head->may(key);
        const DesignValue* loads = root_.may("load");
        if (loads != nullptr && pattern_.sound) read_loads(reading_, *loads, ids, piece_);
    }

    /// The parts of a pattern with faults are not those that the maker means: nothing is held against them in space.
    void forget_size()
    {
        piece_.size.reset();
        reading_.size_stated = true;
        reading_.doubt_shapes();
    }

    const DesignValue* missing(std::string_view key, std::string_view heading, std::string_view lines)
    {
        const DesignValue* value = root_.may(key);
        if (value == nullptr)
            reading_.fault(Spot{}, "missing-key", fmt::format("the design lacks {}", heading), std::string(lines));
        return value;
    }

    const DesignValue* section(std::string_view key, std::string_view lines)
    {
        const std::string heading = fmt::format("[{}]", key);
        const DesignValue* value = missing(key, heading, lines);
        const bool good = value != nullptr && is_kind(reading_, *value, key, DesignValue::Kind::table);
        return good ? value : nullptr;
    }

    const DesignValue* list(std::string_view key, std::string_view lines)
    {
        const DesignValue* value = missing(key, fmt::format("[[{}]]", key), lines);
        if (value == nullptr || value->kind != DesignValue::Kind::list || !value->items.empty()) return value;
        reading_.fault(value->spot, "missing-key", fmt::format("the design has no [[{}]]", key), std::string(lines));
        return nullptr;
    }

    void read_stated_limits()
    {
        const DesignValue* value = root_.may("limits");
        if (value == nullptr || !is_kind(reading_, *value, "limits", DesignValue::Kind::table)) return;
        DesignTable table(reading_, *value, "[limits]");
        read_limits(table, piece_.limits);
    }

    /// Every list of woods or ring cuts multiplies the number of pieces to be worked out.
    void check_combinations()
    {
        double combinations = 1;
        Spot last;
        for (const WoodChoice& wood : piece_.woods) {
            const double here = static_cast<double>(std::max<std::size_t>(wood.species.size(), 1) * wood.rings.size());
            if (here > 1) last = wood.spot;
            combinations *= here;
        }
        for (const Part& part : piece_.parts) {
            if (!part.own_rings || part.rings.size() < 2) continue;
            last = part.spot;
            combinations *= static_cast<double>(part.rings.size());
        }
        constexpr const char* leave = "every list doubles or trebles the number; leave the ones that you know";
        const double whole = combinations * static_cast<double>(piece_.copies.size());
        if (combinations > kMostCombinations)
            reading_.fault(last, "too-large",
                           fmt::format("the lists of woods and ring cuts make {:.0f} combinations; at most {:.0f} are worked out",
                                       combinations, kMostCombinations),
                           {}, leave);
        else if (combinations > 1 && whole > kMostInAll)
            reading_.fault(
                last, "too-large",
                fmt::format("{:.0f} combinations of woods and ring cuts for {} parts make {:.0f} in all; at most {:.0f} "
                            "are worked out",
                            combinations, piece_.copies.size(), whole, kMostInAll),
                {}, leave);
    }

    DesignRead finished()
    {
        if (reading_.shapes_sound() && !piece_.copies.empty()) {
            ContactSearch search = find_contacts(piece_);
            for (Fault& fault : search.faults) reading_.fault(std::move(fault));
            piece_.hung = hung_copies(piece_, search.contacts);
        }
        DesignRead result;
        result.faults = reading_.sorted_faults();
        if (!result.faults.empty()) return result;
        piece_.assumed = reading_assumptions(piece_, reading_.facts);
        piece_.assumed.insert(piece_.assumed.end(), reading_.assumed.begin(), reading_.assumed.end());
        piece_.unused = unused_in(piece_);
        result.piece = std::move(piece_);
        return result;
    }

    Reading reading_;
    DesignValue written_; ///< the design with its pattern written out
    PatternRead pattern_;
    DesignTable root_;
    Piece piece_;
};

} // namespace

DesignRead read_design(std::string_view text, const Facts& facts)
{
    auto tree = parse_tree(text);
    if (const Fault* fault = std::get_if<Fault>(&tree)) return {std::nullopt, {*fault}};
    return read_design(std::move(std::get<DesignValue>(tree)), text, facts);
}

DesignRead read_design(DesignValue root, std::string_view text, const Facts& facts)
{
    if (root.entries.empty()) return {std::nullopt, {empty_fault()}};
    return DesignReader(std::move(root), text, facts).read();
}

} // namespace jointwright
