#pragma once
// What reading a line and reading a plate share. SI doubles.

#include "mechanics/structure/read_member.hpp"
#include "mechanics/structure/section_stress.hpp"

#include <vector>

namespace jointwright {

/// Span about a place: the distance between its neighbouring supports, twice the overhang beyond the outer ones.
double span_about(const std::vector<double>& supports, double at);

/// Keeps a sag where it is the largest, in itself or for its span.
/// @param beyond  the place lies on an overhang, so that the span is twice that
/// @param worst   the largest share of a span so far
void keep_sag(MemberResult& r, double sag, double span, bool beyond, double& worst);

/// Keeps the place of the largest shear stress, of a lying part or an upright one.
template <class Result>
void keep_shear(Result& r, const SectionShear& shear, double torsion)
{
    if (shear.stress <= r.shear_stress) return;
    r.shear_stress = shear.stress;
    r.shear = shear.force;
    r.shear_area = shear.area;
    r.torsion = torsion;
    r.torsion_stress = shear.twist_stress;
}

/// Keeps the worst notch on the stretched side. @param worst  the largest stress at one so far
void note_notch(MemberResult& r, const NetStretch& s, double sagging, double shear, double at,
                const std::vector<double>& supports, double& worst);

/// A face on which a plate lies, in the plate's own measures.
struct PlateSupport {
    double s0, s1, t0, t1;
};
std::vector<PlateSupport> plate_supports(const Structure& structure, const std::vector<Bearing>& bearings, std::size_t copy);

/// Sag of a plate at each of its grid points: along the grain and across it, against the supports on that line; where no support lies on
/// either, against the nearest.
void read_plate_sag(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<PlateSupport>& supports,
                    bool edges_count, const kernel::FrameSolution& solution);

/// Moments and stresses of a plate. @param places  where it is borne along its grain
void read_plate(MemberResult& r, const Structure& structure, std::size_t copy, const std::vector<double>& places,
                const kernel::FrameSolution& solution);

} // namespace jointwright
