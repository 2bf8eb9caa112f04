// [[load]]: a force beside those that the use brings, and the copies that it stands on.

#include "piece/model/lying.hpp"
#include "piece/read/readers.hpp"

#include "measure/text.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace jointwright {

namespace {

constexpr std::size_t kMostLoads = 1000;

/// How much of a load a copy gets: by the area of it in plan that lies under the patch [m²], or all that bear the point alike.
double share_of(const StatedLoad& load, const Lying& lying)
{
    if (!load.patch) return lying.holds(load.at) ? 1.0 : 0.0;
    const double x = (*load.patch)[0] / 2, y = (*load.patch)[1] / 2;
    const auto under = lying.under({load.at[0] - x, load.at[0] + x, load.at[1] - y, load.at[1] + y});
    return under ? under->area : 0.0;
}

/// Finds the copies under the load and their shares. @return false when there are none
bool resolve(const Piece& piece, StatedLoad& load)
{
    for (const std::size_t copy : piece.copies_named(load.on)) {
        const double share = share_of(load, Lying(piece.part_of(copy), piece.copies[copy]));
        if (share <= kTouch * kTouch) continue;
        load.copies.push_back(copy);
        load.shares.push_back(share);
    }
    const double sum = std::accumulate(load.shares.begin(), load.shares.end(), 0.0);
    for (double& share : load.shares) share /= sum;
    return !load.copies.empty();
}

bool read_direction(Reading& reading, const DesignValue& value, StatedLoad& load)
{
    if (!is_kind(reading, value, "direction", DesignValue::Kind::list, "[0, 0, -1]")) return false;
    Point direction{};
    bool good = value.items.size() == 3;
    for (std::size_t i = 0; good && i < 3; ++i) {
        const auto number = as_number(reading, value.items[i], "direction", {-1e6, 1e6, true});
        if (!number) return false;
        direction[i] = *number;
    }
    const double length = std::hypot(direction[0], direction[1], direction[2]);
    if (good && length > 0) {
        for (std::size_t i = 0; i < 3; ++i) load.direction[i] = direction[i] / length;
        return true;
    }
    reading.fault(value.spot, good ? "out-of-range" : "wrong-type",
                  "direction takes three numbers, x, y and z, not all of them 0", reading.fixed(value, "[0, 0, -1]"));
    return false;
}

/// Reads `patch` and `at`: a plan rectangle, or a single point without a patch.
bool read_place(DesignTable& table, StatedLoad& load)
{
    Reading& reading = table.reading();
    const DesignValue* patch = table.may("patch");
    const DesignValue* at = table.must("at", reading.lengths_example("[20, 6]"));
    bool good = at != nullptr;
    if (patch != nullptr) {
        const auto sizes = as_lengths(reading, *patch, "patch", 2, LengthRule::size, "[8, 8]");
        if (sizes) load.patch = {(*sizes)[0], (*sizes)[1]};
        good = good && sizes.has_value();
    }
    if (at == nullptr) return false;
    load.spot = at->spot;
    if (patch == nullptr && at->kind == DesignValue::Kind::list && at->items.size() == 2) {
        reading.fault(table.spot(), "missing-key",
                      fmt::format("{} lacks patch: with two coordinates at is the middle of a patch", table.name()),
                      "patch = [8, 8]", "a single point of the part takes three coordinates");
        return false;
    }
    const std::size_t count = patch != nullptr ? 2 : 3;
    const auto place = as_lengths(reading, *at, "at", count, LengthRule::coordinate, count == 2 ? "[20, 6]" : "[20, 6, 17.5]");
    if (!place) return false;
    std::copy(place->begin(), place->end(), load.at.begin());
    return good;
}

void read_load(DesignTable& table, const PartIds& ids, Piece& piece)
{
    Reading& reading = table.reading();
    StatedLoad load;
    load.spot = table.spot();
    if (const DesignValue* name = table.must("name", R"("flower pot")"))
        if (auto text = as_text(reading, *name, "name")) {
            load.name = std::move(*text);
            table.rename(fmt::format("load {}", in_quotes(load.name)));
        }
    const DesignValue* on = table.must("on", ids.empty() ? R"("slat")" : toml_text(ids.begin()->first));
    const auto part = on != nullptr ? as_part_name(reading, *on, "on", ids) : std::nullopt;
    if (const DesignValue* force = table.must("force", R"("200 N")"))
        if (const auto read = as_force(reading, *force, "force")) load.force = *read;
    if (const DesignValue* direction = table.may("direction")) read_direction(reading, *direction, load);
    if (const DesignValue* lasting = table.may("lasting")) load.lasting = as_truth(reading, *lasting, "lasting").value_or(false);
    const bool placed = read_place(table, load);
    table.finish();
    if (!part || !placed) return;
    load.on = *part;
    const bool known = !piece.copies_named(load.on).empty();
    // A part that could not be placed has its own fault.
    if (known && !resolve(piece, load))
        reading.fault(load.spot, "load-misses", fmt::format("no copy of {} lies under {}", in_quotes(load.on), table.name()), {},
                      "at is in the coordinates of the piece: the middle of the patch in plan, or three coordinates of a point "
                      "of the part");
    piece.loads.push_back(std::move(load));
}

} // namespace

void read_loads(Reading& reading, const DesignValue& list, const PartIds& ids, Piece& piece)
{
    const auto tables = tables_of(reading, list, "load");
    if (tables.size() > kMostLoads) {
        reading.fault(tables[kMostLoads]->spot, "too-large",
                      fmt::format("the design has {} loads; it may have {}", tables.size(), kMostLoads));
        return;
    }
    for (const DesignValue* value : tables) {
        DesignTable table(reading, *value, "[[load]]");
        read_load(table, ids, piece);
    }
}

} // namespace jointwright
