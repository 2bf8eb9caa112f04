#pragma once
// What joints let into each copy, as bodies in space: tenons, parts in housings and grooves, dowels, screws, bolts. SI doubles: metres.

#include "piece/contacts/contact.hpp"
#include "piece/model/piece.hpp"
#include "piece/solid/convex_kernel.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

/// One thing that takes the place of a copy's own wood.
struct LetIn {
    enum class Kind { tenon, bridle, housing, groove, dowel, screw, bolt, cross_dowel } kind = Kind::tenon;
    std::size_t into = 0;                 ///< the copy that is cut for it
    std::size_t contact = 0;              ///< index of the contact whose joint asks for it
    std::size_t other = 0;                ///< the copy on the other side of that contact
    std::vector<kernel::Cell> bodies;     ///< convex, apart from each other; of bores none: body_of_bore makes it
    kernel::Vec lo{0, 0, 0}, hi{0, 0, 0}; ///< box around it
    kernel::Vec along{1, 0, 0};           ///< unit vector, the way it goes in
    kernel::Vec thin{0, 1, 0};            ///< unit vector square to that: through its thickness; of bores any
    kernel::Vec at{0, 0, 0};              ///< of bores: middle of the mouth
    double from = 0, to = 0;              ///< along · p where it enters and where it ends [m]
    double thickness = 0;                 ///< between its cheeks, of bores the diameter [m]
    double width = 0;                     ///< the third side [m]
    double deeper = 0;                    ///< a groove is cut so much deeper than what is drawn in it [m]
    bool mitred = false;                  ///< its end is to be cut at 45° where it meets another such
    double length() const { return to - from; }
    kernel::Vec wide() const; ///< unit vector square to both
    bool metal() const { return kind == Kind::screw || kind == Kind::bolt || kind == Kind::cross_dowel; }
    bool bore() const { return metal() || kind == Kind::dowel; }
};
std::string_view name_of(LetIn::Kind kind); ///< "tenon", "cross dowel"

/// The prism that stands for a bore.
kernel::Cell body_of_bore(const LetIn& bore);

/// Everything that joints let into the copies of a piece, in the order of the contacts.
///
/// Tenons as their cheeks stand, loose ones in both parts; what is drawn inside the second part of a housing, groove or sliding dovetail;
/// the tongue of a bridle; dowels half in either part; the shanks of screws and bolts in the first part, their points in the second, and
/// the cross dowels of bolts. Fasteners stand along their face as the design says. Leaves out: laps, mitres and dovetails, whose parts
/// share the space at their ends; pegs, keys, splines and buttons; pocket screws, which go in at an angle; joints without sizes.
/// @param contacts  of that piece, as find_contacts gives them
/// @param whole     becomes false where there are more bores than kMostLetIns
std::vector<LetIn> let_ins_of(const Piece& piece, const std::vector<Contact>& contacts, bool& whole);
constexpr std::size_t kMostLetIns = 50'000;

/// Two things of unlike joints in one copy that share space.
struct Meeting {
    std::size_t first = 0, second = 0;        ///< indices of let-ins, first < second
    double depth = 0;                         ///< the least that has to go for them to clear each other [m]
    double clear_first = 0, clear_second = 0; ///< length of each from where it enters to where the other begins [m]
    double sideways = 0;                      ///< square to both: setting one so much aside clears them [m]
    bool mitred = false;                      ///< both are cut at 45°: they part there and share nothing
    double mitre_first = 0, mitre_second = 0; ///< mean length of each if both ends are mitred; 0 where that is no way out [m]
};

/// All let-ins of a piece, where they meet, and what of each joint is left.
struct LetIns {
    std::vector<LetIn> all;
    std::vector<Meeting> meetings;
    std::vector<double> kept; ///< by contact: share of its tenon's or its dowels' length that meets nothing else, 0 to 1
    bool whole = true;        ///< false: there are more bores than are looked at
};

/// Meets all let-ins of each copy with each other.
///
/// Not met are cuts of one joint (bore_rows tells of dowels that crowd each other), screws with wood (they may go through a tenon), parts in housings with each other (their own solids are
/// met where they are drawn), and a groove with the tenon of a part that has the same panel in a groove: its haunch fills the groove. Of two
/// that meet neither keeps what they share nor what lies beyond it. Mitred ends keep what lies on their side of the 45° plane.
LetIns meet_let_ins(const Piece& piece, const std::vector<Contact>& contacts);

/// Share of the stated length of a contact's tenon or dowels that counts: 1 where nothing meets it, never quite 0. The contact is one of
/// `contacts`, those that were met.
double kept_share(const LetIns& let_ins, const std::vector<Contact>& contacts, const Contact& contact);

} // namespace jointwright
