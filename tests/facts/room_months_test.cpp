#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "facts/room_months.hpp"

#include <algorithm>

using namespace jointwright;
using namespace jointwright::testing;

TEST_CASE("A room known month by month has its driest and dampest month for its seasons", "[facts]")
{
    std::size_t with_months = 0;
    for (const Listing& listed : shared_facts().rooms()) {
        CAPTURE(listed.name);
        const auto months = months_of_room(shared_facts(), listed.name);
        if (!months) continue;
        ++with_months;
        const RoomRecord* room = shared_facts().find_room(listed.name);
        REQUIRE(room);
        REQUIRE(std::holds_alternative<MoistureContent>(room->driest));
        CHECK(std::get<MoistureContent>(room->driest).percent() == *std::min_element(months->begin(), months->end()));
        CHECK(std::get<MoistureContent>(room->dampest).percent() == *std::max_element(months->begin(), months->end()));
        CHECK(room->outdoors);
        CHECK(room->cite.provenance == Provenance::memory);
    }
    CHECK(with_months == 20);
    CHECK_FALSE(months_of_room(shared_facts(), "heated, cold winters"));
    CHECK_FALSE(months_of_room(shared_facts(), "the moon"));
}

TEST_CASE("Months that are not twelve numbers are a broken table", "[facts][broken]")
{
    for (const char* months : {"[1, 2, 3]", "\"damp\"", "[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, \"12\"]",
                               "[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 31]", "[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, nan]"}) {
        CAPTURE(months);
        DataTexts texts = embedded_data();
        texts["rooms.toml"] = std::string(R"([[room]]
name = "cave"
driest = { moisture = 6 }
dampest = { moisture = 20 }
source = "common-practice"
where = "own estimate"
provenance = "estimated"
months = )") + months + "\n";
        CHECK_THROWS_AS(months_of_room(Facts(texts), "cave"), BrokenData);
    }
}
