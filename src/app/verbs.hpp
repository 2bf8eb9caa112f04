#pragma once
// The verbs of the command line. Adding one is one file, one line in command.cpp and one test.

#include "app/answer.hpp"

namespace jointwright {

// Each takes the words after the verb and answers; none of them throws for wrong input.
Answer check(const Arguments& arguments);
Answer expand(const Arguments& arguments);
Answer movement(const Arguments& arguments);
Answer emc(const Arguments& arguments);
Answer beam(const Arguments& arguments);
Answer size(const Arguments& arguments);
Answer glue_line(const Arguments& arguments);
Answer joint(const Arguments& arguments);
Answer fastener(const Arguments& arguments);
Answer species(const Arguments& arguments);
Answer rooms(const Arguments& arguments);
Answer glues(const Arguments& arguments);
Answer finishes(const Arguments& arguments);
Answer sources(const Arguments& arguments);
Answer checks(const Arguments& arguments);
Answer new_design(const Arguments& arguments);

/// Everything after the program's name: finds the verb and asks it. Nothing gets out of here by exception: what is not foreseen becomes
/// status 3.
Answer answer_to(const Arguments& arguments);

} // namespace jointwright
