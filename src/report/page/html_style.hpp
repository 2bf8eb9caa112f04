#pragma once
// The style sheet of the page.

#include <string_view>

namespace jointwright {

/// CSS for screens from 320 px on, light and dark, and for paper. Every text colour keeps at least 4.5 : 1 against its ground.
extern const std::string_view kPageStyle;

} // namespace jointwright
