#pragma once
// A value or the reason why there is none. Errors in the input are values; exceptions mean a bug or a broken machine.

#include <string>
#include <utility>
#include <variant>

namespace jointwright {

/// Why a text or a number could not be taken: a stable id of the contract, a sentence, and what to write instead.
struct Misreading {
    std::string id;   ///< for example "wrong-unit", "wrong-type", "out-of-range"
    std::string says; ///< one sentence, without the place
    std::string fix;  ///< what could be written instead, or empty
};

/// Either a T or a Misreading.
template <class T>
class Outcome {
public:
    Outcome(T value) : held_(std::move(value)) {}      // NOLINT(google-explicit-constructor)
    Outcome(Misreading why) : held_(std::move(why)) {} // NOLINT(google-explicit-constructor)
    explicit operator bool() const { return held_.index() == 0; }
    const T& operator*() const { return std::get<0>(held_); }
    T& operator*() { return std::get<0>(held_); }
    const T* operator->() const { return &std::get<0>(held_); }
    const Misreading& why() const { return std::get<1>(held_); }

private:
    std::variant<T, Misreading> held_;
};

} // namespace jointwright
