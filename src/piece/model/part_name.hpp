#pragma once
// The name of a part, or of one copy of it, as designs write it: "slat", "slat #3".

#include <optional>
#include <string>
#include <string_view>

namespace jointwright {

/// A part id and the copy meant; without a number all copies. Number 0, which no copy has, stands for one that cannot be read.
struct PartName {
    std::string id;
    std::optional<int> number;
    /// "slat", "slat #3".
    std::string text() const;
};

/// Takes a name apart. Ids hold no `#`, so the first one parts id and number; spaces around it do not matter.
PartName part_name(std::string_view name);

} // namespace jointwright
