#pragma once
// The four answers of a check.

#include <string_view>

namespace jointwright {

enum class Verdict { pass, warn, cannot_tell, fail };

/// "pass", "warn", "cannot-tell", "fail".
std::string_view word_of(Verdict verdict);

} // namespace jointwright
