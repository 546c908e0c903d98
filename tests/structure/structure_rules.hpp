// Structure rules: what the folders, includes and files must keep to, as a function of the tree.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace tackfree::testing {

/// Path from the top, with forward slashes, to the file's text.
using Tree = std::map<std::string, std::string>;

/// The files under `root` that the rules speak of.
Tree read_tree(const std::string& root);

/// Every breach, one sentence each.
std::vector<std::string> structure_faults(const Tree& tree);

}  // namespace tackfree::testing
