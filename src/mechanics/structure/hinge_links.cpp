#include "mechanics/structure/hinge_links.hpp"

#include "piece/contacts/hinge_line.hpp"
#include "piece/contacts/hung.hpp"

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

using kernel::Vec3;

constexpr double kHinge = 5e6; // N/m: a leaf on four screws gives about so much, estimated from the slip of screws in wood
constexpr double kLatch =
    10.0; // N m/rad: what keeps a leaf on upright pins from swinging in the sums; its weight does not turn it

Vec3 vec_of(const Point& p) { return {p[0], p[1], p[2]}; }

LinkEnd end_on(std::size_t copy, const MemberLine& line, const Vec3& at)
{
    return {copy, std::clamp(line.along(at), 0.0, line.length), std::clamp(line.across(at), -line.wide / 2, line.wide / 2)};
}

} // namespace

std::vector<JointLink> hinge_links(const Given& given, std::size_t contact, const std::vector<MemberLine>& lines)
{
    const Contact& c = given.layout->contacts[contact];
    const HingeLine hinges = hinge_line(given.piece->joints[*c.joint], c);
    const Vec3 along = vec_of(hinges.along);
    std::vector<JointLink> links;
    for (const Point& place : hinges.places) {
        JointLink link;
        link.contact = contact;
        link.at = vec_of(place);
        link.a = end_on(c.first, lines[c.first], link.at);
        link.b = end_on(c.second, lines[c.second], link.at);
        link.direction = vec_of(hinges.through);
        link.holding = kHinge * kernel::Mat3::Identity();
        if (hinges.upright()) link.turning = kLatch * along * along.transpose();
        links.push_back(std::move(link));
    }
    return links;
}

bool swings_clear(const Given& given, const Contact& contact)
{
    const Piece& piece = *given.piece;
    if (contact.joint || piece.hangs(contact.first) == piece.hangs(contact.second)) return false;
    const std::size_t leaf = piece.hangs(contact.first) ? contact.first : contact.second;
    const auto& contacts = given.layout->contacts;
    const std::vector<std::size_t> groups = joined_groups(piece, contacts);
    return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& c) {
        if (!c.joint || piece.joints[*c.joint].kind != JointKind::hinge || groups[c.first] != groups[leaf]) return false;
        return hinge_line(piece.joints[*c.joint], c).upright();
    });
}

} // namespace jointwright
