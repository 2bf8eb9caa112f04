#include "judging/joints/let_in_words.hpp"

#include "judging/finding_tools.hpp"
#include "measure/write.hpp"

#include <Eigen/Geometry>

#include <fmt/core.h>

#include <array>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kWorthHaving = 0.010; // m: a shorter tenon or one mitred shorter is no remedy

/// The last whole millimetre or sixteenth of an inch below.
double shop_step_down(const Prepared& prepared, double length)
{
    const double step = prepared.units == LengthUnit::inch ? 0.0254 / 16 : 0.001;
    return std::floor(length / step + 1e-6) * step;
}

double shop_step_up(const Prepared& prepared, double length)
{
    const double step = prepared.units == LengthUnit::inch ? 0.0254 / 16 : 0.001;
    return std::ceil(length / step - 1e-6) * step;
}

bool both_tenons(const LetIn& a, const LetIn& b) { return a.kind == LetIn::Kind::tenon && b.kind == LetIn::Kind::tenon; }

const std::string& id_of(const Prepared& prepared, const LetIn& in) { return prepared.piece->part_of(in.other).id; }

std::string mitre_words(const Prepared& prepared, const Meeting& m, const LetIn& a, const LetIn& b)
{
    if (std::min(m.mitre_first, m.mitre_second) < kWorthHaving) return {};
    const std::string kept = fmt::format("they then keep {} and {} of their length", size_words(prepared, m.mitre_first),
                                         size_words(prepared, m.mitre_second));
    if (a.mitred || b.mitred)
        return fmt::format("mitre the end of the tenon of {} too (mitred = true in its tenon): {}",
                           id_of(prepared, a.mitred ? b : a), kept);
    return fmt::format("mitre their ends (mitred = true in both tenons): {}", kept);
}

std::string shorten_words(const Prepared& prepared, const Meeting& m, const LetIn& a, const LetIn& b)
{
    const auto cut = [](const LetIn& in) { return in.kind == LetIn::Kind::tenon || in.kind == LetIn::Kind::dowel; };
    const double turn = a.along.dot(b.along);
    if (both_tenons(a, b) && turn < -0.9) {
        const double each = shop_step_down(prepared, (a.length() + b.length() - m.depth) / 2);
        return each < kWorthHaving ? "" : fmt::format("shorten both to {}", size_words(prepared, each));
    }
    const bool first = cut(a) && (!cut(b) || a.length() - m.clear_first <= b.length() - m.clear_second);
    const LetIn& in = first ? a : b;
    const double to = shop_step_down(prepared, first ? m.clear_first : m.clear_second);
    if (!cut(in) || to < kWorthHaving) return {};
    if (in.kind == LetIn::Kind::dowel) return fmt::format("let the dowel only {} into it", size_words(prepared, to));
    return fmt::format("shorten the tenon of {} to {}", id_of(prepared, in), size_words(prepared, to));
}

std::string aside_words(const Prepared& prepared, const Meeting& m, const LetIn& a, const LetIn& b)
{
    const kernel::Vec aside = std::abs(a.along.dot(b.along)) > 0.9 ? a.wide() : kernel::Vec(a.along.cross(b.along).normalized());
    const std::string by = size_words(prepared, shop_step_up(prepared, m.sideways));
    if (std::abs(aside.z()) > 0.7) return fmt::format("set one {} higher or lower", by);
    return fmt::format("set one {} aside", by);
}

} // namespace

std::string let_in_words(const Prepared& prepared, const LetIn& in)
{
    const std::string& id = id_of(prepared, in);
    switch (in.kind) {
    case LetIn::Kind::tenon: return "the tenon of " + id;
    case LetIn::Kind::bridle: return "the tongue of " + id;
    case LetIn::Kind::housing: return id + " in its housing";
    case LetIn::Kind::groove: return id + " in its groove";
    default: return fmt::format("a {} of {}", name_of(in.kind), id);
    }
}

std::string pair_of_let_ins(const Prepared& prepared, const LetIn& a, const LetIn& b)
{
    const std::string &first = id_of(prepared, a), &second = id_of(prepared, b);
    const bool plural = a.kind == b.kind && (a.kind == LetIn::Kind::tenon || a.bore());
    std::string words;
    if (plural && first == second)
        words = fmt::format("two {}s of {}", name_of(a.kind), first);
    else if (plural)
        words = fmt::format("{}{}s of {} and {}", a.bore() ? "" : "the ", name_of(a.kind), first, second);
    else
        words = fmt::format("{} and {}", let_in_words(prepared, a), let_in_words(prepared, b));
    if (words.front() >= 'a' && words.front() <= 'z') words.front() = static_cast<char>(words.front() - 'a' + 'A');
    return words;
}

std::string side_words(const kernel::Vec& out)
{
    constexpr std::array<std::array<const char*, 2>, 3> sides{
        {{"on the left", "on the right"}, {"at the front", "at the back"}, {"below", "above"}}};
    for (std::size_t i = 0; i < 3; ++i) {
        const double along = out[static_cast<int>(i)];
        if (std::abs(along) > 0.7) return sides[i][along > 0 ? 1 : 0];
    }
    return "on its slanting side";
}

Remedy meeting_remedies(const Prepared& prepared, const Meeting& m)
{
    const LetIn &a = prepared.layout->let_ins.all[m.first], &b = prepared.layout->let_ins.all[m.second];
    Remedy remedy;
    for (const std::string& way : {both_tenons(a, b) ? mitre_words(prepared, m, a, b) : std::string{},
                                   shorten_words(prepared, m, a, b), aside_words(prepared, m, a, b)})
        remedy.add(way);
    return remedy;
}

std::string wall_remedy(const Prepared& prepared, const LetIn& in, const Wall& wall, double wanted)
{
    const double more = shop_step_up(prepared, wanted - wall.left);
    const std::string& part = prepared.piece->part_of(in.into).id;
    if (wall.place == Wall::Place::bottom) {
        const double to = shop_step_down(prepared, in.length() + in.deeper - more);
        if (in.kind == LetIn::Kind::tenon && wall.left < 0)
            return fmt::format("trim it flush, or let it only {} in", size_words(prepared, in.length() + wall.left));
        return to < kTouch ? fmt::format("make {} {} thicker", part, size_words(prepared, more))
                           : fmt::format("let it only {} into {}, or make {} {} thicker", size_words(prepared, to), part, part,
                                         size_words(prepared, more));
    }
    if (wall.place == Wall::Place::end_of_run)
        return fmt::format("cut it through to that side, or stop it {} from there", size_words(prepared, wanted));
    return fmt::format("move it {} away from that side, or make it {} smaller there", size_words(prepared, more),
                       size_words(prepared, more));
}

} // namespace jointwright
