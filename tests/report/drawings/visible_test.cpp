#include "catch.hpp"
#include "report/drawing_tools.hpp"

#include <random>

using namespace drawn;
using drawing::view_from_above;
using drawing::view_from_corner;
using drawing::view_from_front;
using drawing::view_from_left;

namespace {

constexpr double kTight = 1e-9;

/// Every ray must meet what the drawing shows there, and no two pieces may lie over each other.
void check_by_rays(const std::vector<SeenBody>& bodies, const View& view, std::mt19937& random, int rays)
{
    const std::vector<SeenFace> faces = seen_faces(bodies, view);
    for (const SeenFace& face : faces) {
        REQUIRE(face.facing.z() > 0); // nothing that looks away
        for (const kernel::Polygon& piece : face.pieces)
            for (const Vec& p : piece.corners) REQUIRE(p.allFinite());
    }
    Vec lo = Vec::Constant(1e9), hi = Vec::Constant(-1e9);
    for (const SeenBody& body : bodies)
        for (const kernel::Cell& cell : body.cells)
            for (const kernel::Polygon& face : cell.faces)
                for (const Vec& p : face.corners) {
                    lo = lo.cwiseMin(view.place(p));
                    hi = hi.cwiseMax(view.place(p));
                }
    std::uniform_real_distribution<double> across(lo.x(), hi.x()), up(lo.y(), hi.y());
    for (int i = 0; i < rays; ++i) {
        const double x = across(random), y = up(random);
        int over = 0;
        bool on_edge = false;
        const SeenFace* shown = nullptr;
        for (const SeenFace& face : faces)
            for (const kernel::Polygon& piece : face.pieces) {
                const double inside = depth_inside(piece, x, y);
                on_edge = on_edge || std::abs(inside) < 1e-6;
                if (inside < 1e-6) continue;
                ++over;
                shown = &face;
            }
        const auto met = met_at(bodies, view, x, y);
        if (on_edge || (met && !met->clear)) continue;
        CAPTURE(x, y, over);
        REQUIRE(over == (met ? 1 : 0));
        if (!met) continue;
        REQUIRE(shown->body == met->body);
        REQUIRE(shown->normal.dot(met->normal) > 1 - 1e-9);
    }
}

kernel::Cell random_box(std::mt19937& random, bool on_a_grid, bool turned)
{
    std::uniform_real_distribution<double> place(0, 1), size(0.02, 0.6), angle(-3, 3);
    const auto step = [&](double v) { return on_a_grid ? std::round(v * 8) / 8 : v; };
    Vec lo, hi;
    for (int k = 0; k < 3; ++k) {
        lo[k] = step(place(random));
        hi[k] = lo[k] + std::max(on_a_grid ? 0.125 : 0.0, step(size(random)));
    }
    if (!turned) return box(lo, hi);
    return turned_box(lo, hi, Vec(angle(random), angle(random), angle(random) + 4), angle(random));
}

} // namespace

TEST_CASE("Points come to the paper where hand calculation puts them", "[drawing]")
{
    const Vec p(0.3, 0.2, 0.5);
    CHECK((view_from_front().place(p) - Vec(0.3, 0.5, -0.2)).norm() < kTight);
    CHECK((view_from_above().place(p) - Vec(0.3, 0.2, 0.5)).norm() < kTight);
    CHECK((view_from_left().place(p) - Vec(-0.2, 0.5, -0.3)).norm() < kTight);
    // Turned and raised by 30 degrees: right = (√3/2, −1/2, 0), up = (1/4, √3/4, √3/2), towards the eye = (−√3/4, −3/4, 1/2).
    const double r = std::sqrt(3.0);
    const View corner = view_from_corner(std::acos(-1.0) / 6, std::acos(-1.0) / 6);
    CHECK((corner.place(p) - Vec(0.15 * r - 0.1, 0.075 + 0.05 * r + 0.25 * r, -0.075 * r - 0.15 + 0.25)).norm() < kTight);
    CHECK(std::abs(corner.right.cross(corner.up).dot(corner.towards) - 1) < kTight);
}

TEST_CASE("A single box shows three faces from its corner and one from the front", "[drawing]")
{
    const std::vector<SeenBody> bodies{{{box({0, 0, 0}, {0.4, 0.3, 0.2})}}};
    const auto corner = seen_faces(bodies, view_from_corner(0.6, 0.5));
    REQUIRE(corner.size() == 3);
    CHECK(face_of(corner, 0, {-1, 0, 0}));
    CHECK(face_of(corner, 0, {0, -1, 0}));
    CHECK(face_of(corner, 0, {0, 0, 1}));
    const auto front = seen_faces(bodies, view_from_front());
    REQUIRE(front.size() == 1);
    CHECK_THAT(paper_area(front, 0), WithinAbs(0.08, kTight));
}

TEST_CASE("A slat across a rail hides its share of the rail and no more", "[drawing]")
{
    // Rail 1000 x 40 x 80, slat 50 wide and 20 thick lies on it and hangs over in front.
    const std::vector<SeenBody> bodies{{{box({0, 0, 0}, {1, 0.04, 0.08})}}, {{box({0.3, -0.1, 0.08}, {0.35, 0.2, 0.10})}}};
    const auto above = seen_faces(bodies, view_from_above());
    CHECK_THAT(paper_area(above, 0), WithinAbs(0.04 - 0.05 * 0.04, kTight));
    CHECK_THAT(paper_area(above, 1), WithinAbs(0.05 * 0.3, kTight));
    const auto front = seen_faces(bodies, view_from_front());
    CHECK_THAT(paper_area(front, 0), WithinAbs(0.08, kTight));
    CHECK_THAT(paper_area(front, 1), WithinAbs(0.05 * 0.02, kTight));
    // From below the rail hides the middle of the slat.
    const View below{{1, 0, 0}, {0, -1, 0}, {0, 0, -1}};
    CHECK_THAT(paper_area(seen_faces(bodies, below), 1), WithinAbs(0.05 * 0.26, kTight));
}

TEST_CASE("A slat let into a rail shows above it and in its notch", "[drawing]")
{
    // 12 of the slat's 20 mm lie in the notch, flush in front: the rail is two ends and the bottom under the slat.
    const std::vector<SeenBody> bodies{
        {{box({0, 0, 0}, {0.3, 0.04, 0.08}), box({0.35, 0, 0}, {1, 0.04, 0.08}), box({0.3, 0, 0}, {0.35, 0.04, 0.068})}},
        {{box({0.3, 0, 0.068}, {0.35, 0.2, 0.088})}}};
    const auto front = seen_faces(bodies, view_from_front());
    CHECK_THAT(paper_area(front, 0), WithinAbs(0.08 - 0.05 * 0.012, kTight));
    CHECK_THAT(paper_area(front, 1), WithinAbs(0.05 * 0.02, kTight));
    // The three front faces of the rail lie in one plane and count as one.
    REQUIRE(face_of(front, 0, {0, -1, 0}));
    CHECK(front.size() == 2);
}

TEST_CASE("A tenon in a leg is hidden; its shoulder touches and hides nothing else", "[drawing]")
{
    // Leg 60 x 60; the rail's tenon goes 40 deep. Mortised leg as four cells round the tenon and one behind it.
    const std::vector<SeenBody> bodies{
        {{box({0, 0, 0}, {0.06, 0.02, 0.5}), box({0, 0.04, 0}, {0.06, 0.06, 0.5}), box({0, 0.02, 0}, {0.06, 0.04, 0.3}),
          box({0, 0.02, 0.4}, {0.06, 0.04, 0.5}), box({0, 0.02, 0.3}, {0.02, 0.04, 0.4})}},
        {{box({0.06, 0.01, 0.28}, {0.6, 0.05, 0.42}), box({0.02, 0.02, 0.3}, {0.06, 0.04, 0.4})}}};
    const auto front = seen_faces(bodies, view_from_front());
    CHECK_THAT(paper_area(front, 0), WithinAbs(0.06 * 0.5, kTight));
    CHECK_THAT(paper_area(front, 1), WithinAbs(0.54 * 0.14, kTight));
    const auto left = seen_faces(bodies, view_from_left());
    CHECK_THAT(paper_area(left, 0), WithinAbs(0.06 * 0.5, kTight));
    CHECK(paper_area(left, 1) == 0);
    // Seen from the right the rail hides its end of the leg.
    const View right{{0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
    CHECK_THAT(paper_area(seen_faces(bodies, right), 0), WithinAbs(0.06 * 0.5 - 0.04 * 0.14, kTight));
}

TEST_CASE("Crossing braces weave: each is before the other somewhere", "[drawing]")
{
    // Three boards, each over the next and under the one before it: no order of painting is right.
    const Vec y(0, 1, 0), z(0, 0, 1), x(1, 0, 0);
    const std::vector<SeenBody> bodies{{{turned_box({-0.5, -0.06, -0.01}, {0.5, 0.04, 0.01}, y, 0.1)}},
                                       {{turned_box({-0.04, -0.5, -0.01}, {0.06, 0.5, 0.01}, x, 0.1)}},
                                       {{turned_box({-0.5, -0.05, -0.01}, {0.5, 0.05, 0.01}, Vec(-0.1, 0.1, 1), 0.8)}}};
    std::mt19937 random(7);
    for (const View& view : {view_from_above(), view_from_corner(0.5, 0.9), view_from_corner(-1, 0.6)})
        check_by_rays(bodies, view, random, 3000);
    const std::vector<SeenBody> cyclic{{{turned_box({0, 0, 0}, {1, 0.1, 0.02}, y, 0.12)}},
                                       {{turned_box({0.6, -0.4, 0}, {0.7, 0.6, 0.02}, x, 0.12)}},
                                       {{turned_box({-0.1, 0.3, -0.03}, {0.9, 0.4, -0.01}, Vec(0.2, -1, 0), 0.3)}}};
    check_by_rays(cyclic, view_from_above(), random, 3000);
}

TEST_CASE("Boxes that touch: the shared face never shows", "[drawing]")
{
    const std::vector<SeenBody> bodies{{{box({0, 0, 0}, {0.1, 0.1, 0.1})}},
                                       {{box({0.1, 0, 0}, {0.2, 0.1, 0.1})}},
                                       {{box({0, 0, 0.1}, {0.2, 0.1, 0.2})}},
                                       {{box({0, -0.1, 0}, {0.2, 0, 0.2})}}};
    const auto faces = seen_faces(bodies, view_from_corner(0.6, 0.5));
    CHECK_FALSE(face_of(faces, 0, {0, 0, 1}));
    CHECK_FALSE(face_of(faces, 0, {0, -1, 0}));
    CHECK_FALSE(face_of(faces, 2, {0, -1, 0}));
    CHECK_FALSE(face_of(faces, 1, {-1, 0, 0}));
    CHECK(face_of(faces, 0, {-1, 0, 0}));
    const auto front = seen_faces(bodies, view_from_front());
    CHECK(front.size() == 1);
}

TEST_CASE("Faces that lie in each other show once", "[drawing]")
{
    const std::vector<SeenBody> bodies{{{box({0, 0, 0}, {0.2, 0.1, 0.1})}}, {{box({0.1, 0, 0}, {0.3, 0.1, 0.1})}}};
    const auto front = seen_faces(bodies, view_from_front());
    CHECK_THAT(paper_area(front, 0), WithinAbs(0.02, kTight));
    CHECK_THAT(paper_area(front, 1), WithinAbs(0.01, kTight));
}

TEST_CASE("Random boxes, loose, in contact, through each other and turned: every ray sees what is drawn", "[drawing]")
{
    std::mt19937 random(20240229);
    std::uniform_real_distribution<double> angle(-3.1, 3.1), rise(-1.5, 1.5);
    for (int round = 0; round < 60; ++round) {
        const bool grid = round % 3 != 0, turned = round % 4 == 3;
        std::vector<SeenBody> bodies;
        for (int i = 0; i < 14; ++i) {
            SeenBody body;
            body.cells.push_back(random_box(random, grid, turned && i % 2 == 0));
            if (i % 5 == 4) body.cells.push_back(random_box(random, grid, false));
            bodies.push_back(std::move(body));
        }
        const View views[] = {view_from_front(), view_from_above(), view_from_left(),
                              view_from_corner(angle(random), rise(random))};
        CAPTURE(round);
        check_by_rays(bodies, views[round % 4], random, 400);
    }
}

TEST_CASE("Nothing to see is no face, and flat or empty cells do no harm", "[drawing]")
{
    CHECK(seen_faces(std::vector<SeenBody>{}, view_from_front()).empty());
    CHECK(seen_faces(std::vector<SeenBody>{{}, {{kernel::Cell{}}}}, view_from_front()).empty());
    const auto flat = seen_faces(std::vector<SeenBody>{{{box({0, 0, 0}, {0, 0.1, 0.1})}}, {{box({0, 0.2, 0}, {0.1, 0.3, 0.1})}}},
                                 view_from_front());
    CHECK_THAT(paper_area(flat, 1), WithinAbs(0.01, kTight));
}
