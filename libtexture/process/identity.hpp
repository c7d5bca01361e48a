#pragma once
// Identity: which step and which tool is meant. A step is known by its place in its sequence, a tool by its
// key; what steps and tools are called is for people to read.

#include <optional>
#include <string>
#include <vector>

#include "libtexture/process/step.hpp"

namespace libtexture {

/// The key of a tool: its name, or, where it has none, what it is made of. Tools of one key are one tool:
/// they share what is drawn at random, and what a test spot found out. What is believed of a tool (wear
/// rates, stiffness_factor, spreads) and how it is driven (speed, force, lanes) are not in it.
std::string key_of(const Abrasive& abrasive);
std::string key_of(const Backing& backing);
std::string key_of(const Motion& motion);

/// The key of the product that an abrasive is a grade of: its family's name, or its own key.
std::string family_key_of(const Abrasive& abrasive);

/// What a tool is made of: grain and carrier of an abrasive; skin, layers and support of a backing; disc and
/// orbit of a motion.
std::string build_of(const Abrasive& abrasive);
std::string build_of(const Backing& backing);
std::string build_of(const Motion& motion);

/// A tool as results name it: its name, or "unnamed backing".
std::string label_of(const Abrasive& abrasive);
std::string label_of(const Backing& backing);
std::string label_of(const Motion& motion);

/// A step as results name it: its own name, or its abrasive's label.
std::string title_of(const Step& step);

/// Titles of the steps of a sequence, all different: of steps without a name whose abrasive comes again, the
/// second is "P1500 film (2)".
std::vector<std::string> titles_of(const std::vector<Step>& steps);

/// The steps, each named by its title.
std::vector<Step> with_titles(std::vector<Step> steps);

/// Place of the step of that title, from 0; none where there is no such step.
std::optional<std::size_t> place_of(const std::vector<Step>& steps, const std::string& title);

}  // namespace libtexture
