#include "ui/spread/line_undo.h"
#include "ui/spread/log_model.h"

#include <gtest/gtest.h>

namespace ringhold {
namespace {

PageLine note(std::int64_t id, bool struck = false) {
    PageLine line;
    line.keys = {NoteId{id}};
    line.struck = struck;
    return line;
}

PageLine looks(std::vector<LineKey> keys) {
    PageLine line;
    line.kind = LogKind::look;
    line.keys = std::move(keys);
    return line;
}

using Keys = std::vector<LineKey>;

TEST(LineUndo, StrikesWhatWasWrittenLastWhereverItStands) {
    LineUndo undo;
    undo.see({note(1), note(2)});
    undo.see({note(1), note(3), note(2)}); // written last, for an earlier time
    EXPECT_EQ(undo.undo(), Keys{NoteId{3}});
    undo.see({note(1), note(3, true), note(2)});
    EXPECT_EQ(undo.undo(), Keys{NoteId{2}}) << "from before: in the order of the log";
    EXPECT_EQ(undo.undo(), Keys{NoteId{1}});
    EXPECT_FALSE(undo.undo());
}

TEST(LineUndo, TakesStrikesBackUntilALineIsWritten) {
    LineUndo undo;
    undo.see({note(1), note(2)});
    EXPECT_FALSE(undo.redo());
    (void)undo.undo();
    undo.see({note(1), note(2, true)});
    EXPECT_EQ(undo.redo(), Keys{NoteId{2}});
    undo.see({note(1), note(2)});
    EXPECT_EQ(undo.undo(), Keys{NoteId{2}});
    undo.see({note(1), note(2, true), note(4)});
    EXPECT_FALSE(undo.redo());
    EXPECT_EQ(undo.undo(), Keys{NoteId{4}});
}

TEST(LineUndo, PassesOverWhatWasStruckByHand) {
    LineUndo undo;
    undo.see({note(1), note(2), note(3)});
    undo.see({note(1), note(2, true), note(3, true)});
    EXPECT_EQ(undo.undo(), Keys{NoteId{1}});
}

TEST(LineUndo, ALookWrittenLaterOnTheSameLineIsAPartOfItsOwn) {
    LineUndo undo;
    undo.see({looks({LookId{1}, LookId{2}})});
    undo.see({looks({LookId{1}, LookId{2}, LookId{3}})});
    EXPECT_EQ(undo.undo(), Keys{LookId{3}});
    EXPECT_EQ(undo.undo(), (Keys{LookId{1}, LookId{2}}));
}

} // namespace
} // namespace ringhold
