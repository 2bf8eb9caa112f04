#pragma once
// What the readers of a design share: the tables, the unit of bare lengths, the text for messages and the faults found so far.

#include "facts/facts.hpp"
#include "measure/read.hpp"
#include "piece/text/fault.hpp"
#include "piece/text/source_text.hpp"
#include "piece/text/value.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// Most faults that are listed; further ones are counted.
constexpr std::size_t kMostFaults = 200;

class Reading {
public:
    Reading(std::string_view text, const Facts& tables) : facts(tables), source(text) {}

    void fault(Fault fault);
    void fault(Spot spot, std::string_view id, std::string says, std::string fix = {}, std::string note = {});
    /// A fault about one of the names that may stand here, with the nearest of them as the fix.
    void unknown_name(const DesignValue& value, std::string_view id, std::string says, const std::vector<std::string>& nearest,
                      std::string note);
    /// The line of a value with the value replaced, to paste.
    std::string fixed(const DesignValue& value, std::string_view by) const { return source.replaced(value.spot, by); }
    /// An example whose bare numbers are lengths in inches, "[42, 14, 17.5]", in the unit of the design, rounded to what a maker would write.
    std::string lengths_example(std::string_view inches) const;
    /// The faults found, in the order of the text.
    Faults sorted_faults();

    /// Further faults are counted, not listed.
    bool is_full() const { return faults_.size() >= kMostFaults; }
    /// False once a fault was found while `about_shapes` was set: the parts in space are not what the maker meant.
    bool shapes_sound() const { return shapes_sound_; }
    /// Says so without a fault of its own.
    void doubt_shapes() { shapes_sound_ = false; }

    const Facts& facts;
    const SourceText source;
    LengthUnit units = LengthUnit::millimetre;
    bool about_shapes = false;        ///< what is read now places or shapes parts
    bool size_stated = false;         ///< [piece] has a size, readable or not
    bool size_by_pattern = false;     ///< the size is that of [pattern], not one that the maker wrote
    std::vector<std::string> assumed; ///< defaults taken, one sentence each

private:
    Faults faults_;
    std::size_t unlisted_ = 0;
    bool shapes_sound_ = true;
};

/// Says that what is read now leaves the parts in space as they are, so that a fault in it does not keep geometry from being checked.
class NotAboutShapes {
public:
    explicit NotAboutShapes(Reading& reading) : reading_(reading), before_(reading.about_shapes) { reading.about_shapes = false; }
    ~NotAboutShapes() { reading_.about_shapes = before_; }
    NotAboutShapes(const NotAboutShapes&) = delete;
    NotAboutShapes& operator=(const NotAboutShapes&) = delete;

private:
    Reading& reading_;
    bool before_;
};

/// "a, b and c", each in quotes.
std::string listed(const std::vector<std::string>& names);

} // namespace jointwright
