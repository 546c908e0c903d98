#include "tackfree/takeoff/lots.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

/// Sums of spaces are compared to this, in m2 or places.
constexpr double hardly = 1e-9;

struct Covered {
  Area operator()(const Board& b) const { return b.length * b.width; }
  Area operator()(const Round& r) const { return r.length * r.diameter; }
  Area operator()(const Tube& t) const { return t.length * t.outer; }
  Area operator()(const Turned& t) const { return t.length * t.diameter; }
  Area operator()(const FramedPanel& p) const { return p.frame.length * p.frame.width; }
  Area operator()(const Louvre& l) const { return l.frame.length * l.frame.width; }
  Area operator()(const EstimatedFrame& f) const { return f.length * f.width; }
  Area operator()(const PlainArea& a) const { return a.area; }
};

const DryingRoom* room_of(const Job& job, const Batch& batch) {
  if (!batch.rules.room || *batch.rules.room >= job.rooms.size()) return nullptr;
  const DryingRoom& room = job.rooms[*batch.rules.room];
  return room.space || room.places ? &room : nullptr;
}

/// Of one piece of a row of the parts list, when a batch's own figure makes it `scale` as large.
double space_of_piece(const DryingRoom& room, const Part& part, double scale) {
  return room.places ? 1.0 : scale * covered_by(part.shape).in(square_metres);
}

/// The batch's own figure over what its parts cover.
double scale_of(const Job& job, const Batch& batch) {
  if (!batch.rules.space) return 1.0;
  double covered = 0;
  for (const Part& part : job.parts)
    if (part.batch == batch.name)
      covered += part.quantity * covered_by(part.shape).in(square_metres);
  return covered > 0 ? batch.rules.space->in(square_metres) / covered : 1.0;
}

double capacity_of(const DryingRoom& room) {
  return room.places ? static_cast<double>(*room.places) : room.space->in(square_metres);
}

/// How many pieces of each row go into each lot, in the order of the list; one lot more than
/// `most_lots` where they do not suffice.
std::vector<std::vector<std::pair<Part, int>>> lots_of(const Job& job, const Batch& batch,
                                                       const DryingRoom& room) {
  const double capacity = capacity_of(room), scale = scale_of(job, batch);
  std::vector<std::vector<std::pair<Part, int>>> lots(1);
  double left = capacity;
  for (const Part& part : job.parts) {
    if (part.batch != batch.name) continue;
    const double each = space_of_piece(room, part, scale);
    for (int rest = part.quantity; rest > 0;) {
      const int fit = each <= 0 ? rest : std::min(rest, static_cast<int>((left + hardly) / each));
      if (fit > 0) lots.back().emplace_back(part, fit);
      left -= fit * each;
      rest -= fit;
      if (rest == 0) break;
      if (lots.size() > most_lots) return lots;
      lots.emplace_back();
      left = capacity;
    }
  }
  return lots;
}

/// Pieces that fit into no lot, named; true when there are none.
bool pieces_fit(const Job& job, const Batch& batch, const DryingRoom& room, Problems& problems) {
  bool fit = true;
  if (room.places) return true;
  const double scale = scale_of(job, batch);
  for (const Part& part : job.parts) {
    const double each = space_of_piece(room, part, scale);
    if (part.batch != batch.name || each <= capacity_of(room) + hardly) continue;
    fit = false;
    problems.push_back(
        {.file = job.file,
         .line = room.line,
         .key = "rooms.drying_space_m2",
         .found = fmt::format("{:g}", capacity_of(room)),
         .wanted =
             fmt::format("wanted space for each part: one \"{}\" of batch \"{}\" (line {} of "
                         "the parts list) takes {:.2f} m2, and \"{}\" has no more than that",
                         part.name, batch.name, part.line, in_hundredths(each) / 100.0, room.name),
         .hint = "give the batch its own \"space_m2\" if it stands or hangs, or another room"});
  }
  return fit;
}

}  // namespace

Area covered_by(const Shape& shape) { return std::visit(Covered{}, shape); }

double space_taken(const Job& job, std::size_t batch) {
  const Batch& own = job.batches.at(batch);
  const DryingRoom* room = room_of(job, own);
  if (room == nullptr) return 0;
  double sum = 0;
  const double scale = scale_of(job, own);
  for (const Part& part : job.parts)
    if (part.batch == own.name) sum += part.quantity * space_of_piece(*room, part, scale);
  return sum;
}

std::optional<double> space_in_room(const Job& job, std::size_t batch) {
  const DryingRoom* room = room_of(job, job.batches.at(batch));
  return room == nullptr ? std::nullopt : std::optional(capacity_of(*room));
}

int in_hundredths(double space) { return static_cast<int>(std::ceil(space * 100 - 1e-6)); }

void split_into_lots(Job& job, Problems& problems) {
  std::vector<Batch> batches;
  std::vector<Part> parts;
  for (const Part& part : job.parts)
    if (find_named(job.batches, part.batch) == nullptr) parts.push_back(part);
  bool any = false;
  for (std::size_t b = 0; b < job.batches.size(); ++b) {
    Batch batch = job.batches[b];
    const DryingRoom* room = room_of(job, batch);
    if (room != nullptr && !pieces_fit(job, batch, *room, problems)) return;
    if (room == nullptr || space_taken(job, b) <= capacity_of(*room) + hardly) {
      batches.push_back(batch);
      for (const Part& part : job.parts)
        if (part.batch == batch.name) parts.push_back(part);
      continue;
    }
    any = true;
    const double scale = scale_of(job, job.batches[b]);
    const auto lots = lots_of(job, job.batches[b], *room);
    if (lots.size() > most_lots) {
      problems.push_back({.file = job.file,
                          .line = room->line,
                          .key = "rooms",
                          .wanted = fmt::format("wanted room for batch \"{}\" in at most {} lots",
                                                batch.name, most_lots),
                          .hint = "give it a larger room, or split it into jobs of their own"});
      return;
    }
    for (std::size_t lot = 0; lot < lots.size(); ++lot) {
      Batch one = batch;
      one.name = fmt::format("{}, lot {}", batch.name, lot + 1);
      one.rules.lot_of = batch.name;
      one.rules.lot = static_cast<int>(lot) + 1;
      one.rules.lots = static_cast<int>(lots.size());
      Area own;
      for (const auto& [row, quantity] : lots[lot]) {
        Part part = row;
        part.quantity = quantity;
        part.batch = one.name;
        own += scale * quantity * covered_by(part.shape);
        parts.push_back(std::move(part));
      }
      if (batch.rules.space) one.rules.space = own;
      batches.push_back(std::move(one));
    }
  }
  if (!any) return;
  job.batches = std::move(batches);
  job.parts = std::move(parts);
}

}  // namespace tackfree
