#pragma once
// The piece as one frame: every part a line of beams along its grain or, where wide, a plate; every contact its springs; feet that press on the
// floor. SI doubles: metres, newtons.

#include "mechanics/frame/frame.hpp"
#include "mechanics/given/given.hpp"
#include "mechanics/loads/load_cases.hpp"
#include "mechanics/structure/joint_links.hpp"
#include "mechanics/structure/member_line.hpp"
#include "mechanics/structure/plate_mesh.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace jointwright {

/// One copy in the frame.
struct StructureMember {
    bool built = false;         ///< false: nothing leads from it to the floor
    std::vector<double> along;  ///< nodes along the line, or grid lines of a plate
    std::vector<double> across; ///< grid lines of a plate across the grain; empty for a line
    int first_node = 0;         ///< a plate's nodes run across first
    int first_element = 0;      ///< beams from node to node; a plate's cells run across first
    int node(std::size_t i, std::size_t j = 0) const
    {
        return first_node + static_cast<int>(across.empty() ? i : i * across.size() + j);
    }
};

/// What a load does to one element.
struct ElementLoad {
    int element = 0;
    double from = 0, to = 0; ///< 0 to 1 along a beam
    kernel::Vec3 force = kernel::Vec3::Zero();
    kernel::Vec12 on_ends = kernel::Vec12::Zero(); ///< of a beam, in the axes of the piece
};

/// A place where the piece stands.
struct Foot {
    std::size_t copy = 0;
    kernel::Vec3 at;
    int press = -1; ///< index of the pressing contact; −1: screwed to the wall
    int grip = -1;  ///< what keeps it from sliding; −1: screwed to the wall
    int tie = -1;   ///< what holds it to the wall, or keeps it from spinning on the floor
    bool on_wall() const { return press < 0; }
};

/// Force and moment that the first part of a contact hands to the second, at the middle of their faces.
struct ContactForce {
    kernel::Vec3 force = kernel::Vec3::Zero(), moment = kernel::Vec3::Zero();
};

/// The frame of a piece, factored, and how to load and read it.
class Structure {
public:
    /// @param on_corners  every foot stands on the corners of its sole, whose breadth then steadies it by what presses on it; else on its middle.
    ///                    Feet in one line always stand on their corners.
    explicit Structure(const Given& given, const LoadCases& cases, bool on_corners = false);
    /// The same piece with joints that resist turning so many times as much as estimated. What is loose is not looked for again.
    Structure with_stiffness(double times) const;
    /// Holds the joints that move in a motion which nothing stops, and factors anew; false when no joint that could hold moves in it. First those
    /// that hold at once, then those with play, the closest first; then those that could be drawn out.
    bool hold_what_moves(const kernel::FreeMotion& motion);

    /// Solves loads that act together; a column each, and a floor for each or none.
    std::vector<kernel::FrameSolution> solve(const std::vector<std::vector<CopyLoad>>& cases,
                                             const std::vector<kernel::FloorState>& floors = {}) const;
    /// Nodal forces of loads, and what they do to each beam of a copy (`elements`, where asked).
    void add_loads(Eigen::Ref<Eigen::VectorXd> nodal, const std::vector<CopyLoad>& loads) const;
    std::vector<ElementLoad> element_loads(std::size_t copy, const std::vector<CopyLoad>& loads) const;

    ContactForce contact_force(std::size_t contact, const kernel::FrameSolution& solution) const;
    /// Middle of a contact's faces, to which its forces are referred.
    const kernel::Vec3& contact_middle(std::size_t contact) const { return middles_[contact]; }
    /// Movement of a copy's own line (or a plate's middle) at a place, in the axes of the piece [m].
    kernel::Vec3 movement(std::size_t copy, double along, double across, const kernel::FrameSolution& solution) const;

    /// What a foot hands to the floor or the wall [N]. `held_down`: it was not let lift.
    kernel::Vec3 foot_force(const Foot& foot, const kernel::FrameSolution& solution, bool held_down = false) const;
    /// The joint resists turning about some axis that pressing alone would not, or being drawn out, since the piece would fold or fall without.
    bool is_held(std::size_t contact) const { return held_after_all_[contact]; }
    /// Contacts that friction alone keeps from being drawn out, while the two parts that bear what sits in them could move apart.
    const std::vector<std::size_t>& drawn_out() const { return drawn_out_; }
    /// How the piece leans before its joints press, for their clearance; a motion for each time that it does. Empty without play.
    const std::vector<Eigen::VectorXd>& play() const { return play_; }

    const kernel::Frame& frame() const { return frame_; }
    const std::vector<MemberLine>& lines() const { return lines_; }
    const std::vector<MemberStiffness>& stiffness() const { return stiffness_; }
    const StructureMember& member(std::size_t copy) const { return members_[copy]; }
    const std::vector<Contact>& contacts() const { return layout_->contacts; }
    const std::vector<Foot>& feet() const { return feet_; }
    /// Copies that nothing keeps from moving, the freest first; empty when the piece stands.
    const std::vector<std::size_t>& loose() const { return loose_; }

private:
    struct Held {
        int tie = -1, press = -1;
        JointLink link;
        double mean =
            0; ///< N/m: this one stands for a row of springs as a whole, along `direction`, and acts only where they act as one
        kernel::Vec3 direction = kernel::Vec3::Zero();
    };
    void add_mean(std::vector<Held>& springs);
    /// How loads are told: from its lower end and its middle as drawn.
    struct SeenFromAbove {
        double low = 0, middle = 0;
        kernel::Vec3 across; ///< in space
    };
    void build_member(std::size_t copy, std::vector<double> places, std::vector<double> across,
                      const std::vector<PlatePatch>& patches);
    void stand_on_floor(std::size_t copy, bool on_corners, std::vector<std::pair<LinkEnd, kernel::Vec3>>& feet) const;
    void hang_on_wall(std::size_t copy, std::vector<std::pair<LinkEnd, kernel::Vec3>>& feet) const;
    kernel::Anchor anchor(const LinkEnd& end) const;
    void set_springs(std::size_t contact);
    void settle_joints();
    bool hold_turning(const kernel::FreeMotion& motion, bool with_play);
    bool hold_drawn(const kernel::FreeMotion& motion);
    bool bearers_part(std::size_t contact, const JointLink& link, const kernel::FreeMotion& motion) const;
    void find_loose();
    void spread_on_plate(std::size_t copy, const CopyLoad& load, Eigen::Ref<Eigen::VectorXd> nodal) const;

    std::shared_ptr<const Piece> piece_;
    std::shared_ptr<const Layout> layout_;
    kernel::Frame frame_;
    std::vector<MemberLine> lines_;
    std::vector<MemberStiffness> stiffness_;
    std::vector<StructureMember> members_;
    std::vector<SeenFromAbove> seen_;     ///< by copy
    std::vector<std::vector<Held>> held_; ///< by contact
    std::vector<kernel::Vec3> middles_;   ///< by contact
    std::vector<JointLet> lets_;          ///< by contact
    std::vector<bool> held_after_all_;    ///< by contact
    std::vector<std::size_t> drawn_out_;
    std::vector<Eigen::VectorXd> play_;
    std::vector<Foot> feet_;
    std::vector<std::size_t> loose_;
};

} // namespace jointwright
