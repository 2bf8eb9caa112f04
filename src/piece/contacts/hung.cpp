#include "piece/contacts/hung.hpp"

#include <algorithm>
#include <numeric>

namespace jointwright {

namespace {

bool is_hinge(const Piece& piece, const Contact& contact)
{
    return contact.joint && piece.joints[*contact.joint].kind == JointKind::hinge;
}

} // namespace

std::vector<std::size_t> joined_groups(const Piece& piece, const std::vector<Contact>& contacts)
{
    std::vector<std::size_t> group(piece.copies.size());
    std::iota(group.begin(), group.end(), std::size_t{0});
    const auto leader = [&](std::size_t i) {
        while (group[i] != i) i = group[i] = group[group[i]];
        return i;
    };
    for (const Contact& contact : contacts)
        if (contact.joint && !is_hinge(piece, contact)) {
            const std::size_t a = leader(contact.first), b = leader(contact.second);
            group[std::max(a, b)] = std::min(a, b);
        }
    for (std::size_t i = 0; i < group.size(); ++i) group[i] = leader(i);
    return group;
}

std::vector<bool> hung_copies(const Piece& piece, const std::vector<Contact>& contacts)
{
    if (std::none_of(contacts.begin(), contacts.end(), [&](const Contact& c) { return is_hinge(piece, c); })) return {};
    const std::vector<std::size_t> group = joined_groups(piece, contacts);
    std::vector<bool> leaf(group.size(), false); // by the group's number
    for (const Contact& contact : contacts)
        if (is_hinge(piece, contact) && group[contact.first] != group[contact.second]) leaf[group[contact.first]] = true;
    std::vector<bool> hung(group.size());
    for (std::size_t i = 0; i < group.size(); ++i) hung[i] = leaf[group[i]];
    if (std::all_of(hung.begin(), hung.end(), [](bool h) { return h; })) return {};
    return hung;
}

} // namespace jointwright
