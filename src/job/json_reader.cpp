// read_tree by nlohmann's event interface, over bytes that are counted as they are taken.
#include <algorithm>
#include <functional>
#include <iterator>
#include <list>
#include <nlohmann/json.hpp>
#include <utility>

#include "job/file_text.hpp"
#include "job/json_trouble.hpp"
#include "job/tree.hpp"

namespace fairblade::job {
namespace {

constexpr std::size_t deepest = 32;
constexpr std::size_t most_keys = 1000;

/// Where the reading stands: the line of the last non-blank byte, so that a number that ends its line keeps it.
struct Tally {
  int line = 1;
  int line_of_last = 1;
};

/// Bytes on their way to the parser, a piece at a time.
class Feed {
 public:
  Feed(std::function<std::string_view()> more, Tally& tally) : more_(std::move(more)), tally_(tally) { ask(); }
  bool done() const { return at_ == piece_.size(); }
  const char& here() const { return piece_[at_]; }
  void step() {
    const char c = here();
    if (c == '\n') {
      ++tally_.line;
    } else if (c != ' ' && c != '\t' && c != '\r') {
      tally_.line_of_last = tally_.line;
    }
    if (++at_ == piece_.size()) ask();
  }
  std::string_view rest() const { return piece_.substr(at_); }  ///< of this piece
  /// Past bytes of the rest that the parser is not to see, the last of which is not blank.
  void skip(std::size_t bytes) {
    if (bytes == 0) return;
    const std::string_view passed = rest().substr(0, bytes);
    tally_.line += static_cast<int>(std::count(passed.begin(), passed.end(), '\n'));
    tally_.line_of_last = tally_.line;
    skipped_ += bytes;
    at_ += bytes;
    if (at_ == piece_.size()) ask();
  }
  std::size_t skipped() const { return skipped_; }

 private:
  void ask() {
    piece_ = more_();
    at_ = 0;
  }
  std::function<std::string_view()> more_;
  Tally& tally_;
  std::string_view piece_;
  std::size_t at_ = 0, skipped_ = 0;
};

/// Where a feed stands; all of one feed's stand at the same place. Without a feed: the end.
class CountedBytes {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;
  explicit CountedBytes(Feed* feed = nullptr) : feed_(feed) {}
  reference operator*() const { return feed_->here(); }
  CountedBytes& operator++() {
    feed_->step();
    return *this;
  }
  void operator++(int) { feed_->step(); }
  bool operator==(const CountedBytes& other) const { return at_end() == other.at_end(); }
  bool operator!=(const CountedBytes& other) const { return !(*this == other); }

 private:
  bool at_end() const { return feed_ == nullptr || feed_->done(); }
  Feed* feed_;
};

class Builder : public nlohmann::json_sax<nlohmann::json> {
 public:
  Builder(std::function<std::string()> text, std::string file, Feed& feed, const Tally& tally, Faults& faults, Node& root,
          std::size_t most_values, const std::vector<LongList>& long_lists)
      : text_(std::move(text)),
        file_(std::move(file)),
        feed_(feed),
        tally_(tally),
        faults_(faults),
        root_(root),
        most_values_(most_values),
        long_lists_(long_lists) {}

  bool null() override { return place(NodeKind::null) != nullptr; }
  bool boolean(bool value) override { return put_number(NodeKind::boolean, value ? 1 : 0); }
  bool number_integer(number_integer_t value) override { return put_number(NodeKind::number, static_cast<double>(value)); }
  bool number_unsigned(number_unsigned_t value) override { return put_number(NodeKind::number, static_cast<double>(value)); }
  bool number_float(number_float_t value, const string_t& written) override {
    if (!put_number(NodeKind::number, value)) return false;
    last_->text = written;
    return true;
  }
  bool string(string_t& value) override {
    Node* node = place(NodeKind::text);
    if (node) node->text = std::move(value);
    return node != nullptr;
  }
  bool binary(binary_t&) override { return false; }  // never in JSON text
  bool start_object(std::size_t) override { return open(NodeKind::object); }
  bool start_array(std::size_t) override { return open(NodeKind::list); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& value) override {
    key_ = std::move(value);
    state_ = JsonState::after_key;
    Node& object = *open_.back();
    duplicate_ = object.find(key_) != nullptr;
    if (duplicate_) {
      faults_.add(here(), in_quotes(key_) + " stands twice (first on line " + std::to_string(object.find(key_)->line) + ")",
                  "keep one of the two");
    }
    return object.keys.size() < most_keys || stop("more than 1000 keys in one object", "check that this is a job file");
  }

  bool parse_error(std::size_t position, const std::string& token, const nlohmann::json::exception& error) override {
    if (error.id == 406) return stop(token + " is too large a number", "check its digits");  // the library: out of range
    const std::size_t bad = feed_.skipped() + (position == 0 ? 0 : position - 1);
    const JsonTrouble trouble = json_trouble(text_(), bad, state_);
    return stop(trouble.what, trouble.remedy);
  }

 private:
  Place here() const { return {file_, tally_.line_of_last}; }
  bool stop(std::string what, std::string remedy) {
    faults_.add(here(), std::move(what), std::move(remedy));
    return false;
  }
  bool put_number(NodeKind kind, double value) {
    Node* node = place(kind);
    if (node) node->number = value;
    return node != nullptr;
  }
  /// A new node where the text now stands.
  Node* place(NodeKind kind) {
    if (++values_ > most_values_) {
      stop("more than " + std::to_string(most_values_ / 1'000'000) + " million values",
           "put the readings in a CSV and name it in \"readings_file\"");
      return nullptr;
    }
    Node* node = &root_;
    if (!open_.empty()) {
      Node& parent = *open_.back();
      if (parent.kind == NodeKind::object && duplicate_) {
        spare_ = Node{};
        node = &spare_;
      } else {
        if (parent.kind == NodeKind::object) parent.keys.push_back(std::move(key_));
        else if (!long_.empty() && &parent == long_.back().node) hand_over();
        node = &parent.items.emplace_back();
      }
    }
    duplicate_ = false;
    node->kind = kind;
    node->line = tally_.line_of_last;
    state_ = open_.empty() ? JsonState::finished : JsonState::after_value;
    last_ = node;
    return node;
  }
  bool open(NodeKind kind) {
    if (open_.size() >= deepest) return stop("brackets stand more than 32 deep", "check that this is a job file");
    const LongList* is_long = kind == NodeKind::list && !duplicate_ ? long_list_here() : nullptr;
    Node* node = place(kind);
    if (!node) return false;
    if (is_long) long_.push_back({node, is_long});
    // A second value of one key is read for its faults only; it needs a home of its own while it is open.
    if (node == &spare_) node = &*spares_.emplace(spares_.end());
    node->kind = kind;
    open_.push_back(node);
    state_ = JsonState::after_value;
    return true;
  }
  /// The one that a list would be which opens now.
  const LongList* long_list_here() const {
    if (open_.empty() || open_.back()->kind != NodeKind::object) return nullptr;
    const auto found = std::find_if(long_lists_.begin(), long_lists_.end(),
                                    [&](const LongList& one) { return one.depth == open_.size() && one.key == key_; });
    return found == long_lists_.end() ? nullptr : &*found;
  }
  /// The last item of the innermost long list is whole.
  void hand_over() {
    const Long here = long_.back();
    for (const Node& item : here.node->items) here.list->take(item);
    here.node->items.clear();
  }
  bool close() {
    if (!long_.empty() && open_.back() == long_.back().node) {
      hand_over();
      long_.pop_back();
    }
    open_.pop_back();
    state_ = open_.empty() ? JsonState::finished : JsonState::after_value;
    if (!long_.empty() && long_.back().list->take_plain && !open_.empty() && open_.back() == long_.back().node) {
      hand_over();  // before those that follow
      feed_.skip(long_.back().list->take_plain(feed_.rest()));
    }
    return true;
  }

  std::function<std::string()> text_;  ///< all of it, for words about what is wrong
  std::string file_;
  Feed& feed_;
  const Tally& tally_;
  Faults& faults_;
  Node& root_;
  std::vector<Node*> open_;
  std::list<Node> spares_;
  Node spare_;
  Node* last_ = nullptr;
  std::string key_;
  bool duplicate_ = false;
  std::size_t values_ = 0, most_values_;
  struct Long {
    Node* node;
    const LongList* list;
  };
  const std::vector<LongList>& long_lists_;
  std::vector<Long> long_;  ///< those that are open
  JsonState state_ = JsonState::nothing;
};

bool parse(Feed& feed, Builder& builder) {
  return nlohmann::json::sax_parse(CountedBytes(&feed), CountedBytes(), &builder, nlohmann::json::input_format_t::json, true,
                                   true);
}

}  // namespace

bool read_tree(std::string_view text, const std::string& file, Faults& faults, Node& root) {
  constexpr std::size_t most_values = 5'000'000;  // some 0.6 GB of tree
  const std::vector<LongList> none;
  Tally tally;
  Feed feed([rest = text]() mutable { return std::exchange(rest, {}); }, tally);
  Builder builder([text] { return std::string(text); }, file, feed, tally, faults, root, most_values, none);
  return parse(feed, builder);
}

bool read_tree(TextInPieces& text, const std::string& file, Faults& faults, Node& root, std::size_t most_values,
               const std::vector<LongList>& long_lists) {
  Tally tally;
  Feed feed([&text] { return text.next(); }, tally);
  Builder builder([&text] { return text.whole(); }, file, feed, tally, faults, root, most_values, long_lists);
  return parse(feed, builder);
}

}  // namespace fairblade::job
