#include "core/report/make_report.h"
#include "tests/core/report/made_up_firing.h"
#include "tests/support/photos.h"
#include "tests/ui/report/pdf_tools.h"
#include "ui/report/report_layout.h"
#include "ui/report/report_pdf.h"
#include "ui/report/report_photos.h"

#include <QRegularExpression>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using namespace test;

/// A whole firing, with something in every section.
FiringRecord fullFiring() {
    auto record = madeUpFiring();
    addChannel(record, 2, Quantity::lineVolts, 239, 600);
    addChannel(record, 3, Quantity::lineAmps, 25, 600);
    for (const auto& [minute, cone, hour] :
         {std::tuple(560., "9", 0.), {580., "9", 1.}, {590., "9", 3.}, {590.5, "10", 0.}, {600., "9", 6.}})
        addLook(record, minute, cone, hour);
    addLook(record, 622, "10", 6);
    addLook(record, 1500, "11", 1.5, true);
    record.notes = {
        {NoteId{1}, FiringId{23}, minuteIn(734), "first ring of light at the spyhole, 1076 ± 3 °C"},
        {NoteId{2}, FiringId{23}, minuteIn(740), "wrong kiln", true}};
    record.settings = {{SettingId{1}, FiringId{23}, minuteIn(35), "damper", "half open"}};
    for (int i = 1; i <= 14; ++i) {
        record.pieces.push_back(
            {PieceId{i}, FiringId{23}, "vase " + std::to_string(i), "frost fern", "middle", true, false});
        record.outcomes.push_back(
            {PieceId{i}, Crystals::many, 20.0 + i, 3, "", "A", "catcher came off clean"});
    }
    return record;
}

FiringRecord withNotes(int notes, int handReadings = 0) {
    auto record = fullFiring();
    for (int i = 1; i <= notes; ++i)
        record.notes.push_back({NoteId{100 + i}, FiringId{23}, minuteIn(i * 3),
                                "note number " + std::to_string(i) + " of a long and talkative night"});
    for (int i = 1; i <= handReadings; ++i)
        record.readings.push_back({ChannelId{1}, minuteIn(i + 0.5), 500, Origin::hand});
    std::ranges::stable_sort(record.readings, {}, &Reading::at);
    return record;
}

PageDocument laidOut(const FiringRecord& record, Paper paper = Paper::a4) {
    ReportContext context;
    context.style = {TemperatureScale::celsius, "Europe/Paris"};
    return layOutReport(makeReport(record, context), paper);
}

SeenPdf seen(const PageDocument& document) {
    const auto pdf = toPdf(document);
    EXPECT_TRUE(pdf.ok());
    return SeenPdf(*pdf);
}

TEST(ReportPdf, GivesItsTextBackWhole) {
    const auto text = seen(laidOut(fullFiring())).text();
    for (const char* words : {"Firing 23, Heron",
                              "Sunday 1 March 2026, 09:00 to Monday 02:40 CET",
                              "Frost fern and lichen, 14 pieces",
                              "“Cone 10, three rings”",
                              "60 kWh",
                              "Cones, middle shelf",
                              "first lean",
                              "3 o’clock",
                              "cold: 1½ o’clock",
                              "growth 1076 ± 6 °C",
                              "3 h 32",
                              "98.9 %",
                              "°C/h",
                              "The crystal it drew",
                              "µm/min",
                              "mm across",
                              "three rings",
                              "21:14",
                              "first ring of light at the spyhole, 1076 ± 3 °C",
                              "wrong kiln (struck out)",
                              "damper half open",
                              "Look · 9 at 3 o’clock, 10 standing",
                              "vase 14",
                              "catcher came off clean",
                              "it is no safety device",
                              "infrared-rated eyewear",
                              "local codes",
                              "page 1 of"})
        EXPECT_TRUE(text.contains(QString::fromUtf8(words))) << words << "\n" << text.toStdString();
}

TEST(ReportPdf, EmbedsItsFontsAndHasNoPictures) {
    const auto pdf = seen(laidOut(fullFiring()));
    const auto fonts = pdf.fonts();
    EXPECT_GE(fonts.size(), 3); // Lato in two weights, Vollkorn
    for (const auto& font : fonts) {
        EXPECT_TRUE(font.contains(u"TrueType") || font.contains(u"CID")) << font.toStdString();
        // the columns emb, sub, uni: embedded, and with a map back to characters
        EXPECT_TRUE(font.contains(QStringLiteral("yes"))) << font.toStdString();
        EXPECT_TRUE(font.contains(QRegularExpression(QStringLiteral("yes\\s+\\w+\\s+yes"))))
            << font.toStdString();
    }
    EXPECT_TRUE(fonts.join(u'\n').contains(u"Lato"));
    EXPECT_TRUE(fonts.join(u'\n').contains(u"Vollkorn"));
    EXPECT_EQ(pdf.images(), 0);
}

struct LengthCase {
    int notes;
    int handReadings;
    Paper paper;
};

class ReportLengths : public testing::TestWithParam<LengthCase> {};

TEST_P(ReportLengths, TakeOneToThreePages) {
    const auto& [notes, readings, paper] = GetParam();
    const auto pdf = seen(laidOut(withNotes(notes, readings), paper));
    EXPECT_GE(pdf.pages(), 1);
    EXPECT_LE(pdf.pages(), 3);
    EXPECT_TRUE(pdf.info().contains(paper == Paper::a4 ? QStringLiteral("(A4)") : QStringLiteral("(letter)")))
        << pdf.info().toStdString();
    const auto text = pdf.text();
    for (int i = 1; i <= notes; ++i)
        EXPECT_TRUE(text.contains(QStringLiteral("note number %1 of").arg(i))) << i;
    EXPECT_TRUE(text.contains(QStringLiteral("it is no safety device")));
}

INSTANTIATE_TEST_SUITE_P(ReportPdf, ReportLengths,
                         testing::Values(LengthCase{0, 0, Paper::a4}, LengthCase{0, 0, Paper::letter},
                                         LengthCase{30, 0, Paper::letter}, LengthCase{120, 0, Paper::a4},
                                         LengthCase{120, 0, Paper::letter}, LengthCase{120, 400, Paper::a4},
                                         LengthCase{120, 400, Paper::letter}));

/// Whether all ink keeps this far from the sheet's edges, in points.
bool keepsOff(const QImage& page, double points, int dpi) {
    const int off = static_cast<int>(points * dpi / 72);
    for (int y = 0; y < page.height(); ++y)
        for (int x = 0; x < page.width(); ++x) {
            const bool inside = x >= off && y >= off && x < page.width() - off && y < page.height() - off;
            if (!inside && qGray(page.pixel(x, y)) < 250)
                return false;
        }
    return true;
}

/// With a photo of each piece, 1600 by 1200.
FiringRecord withPhotos() {
    auto record = fullFiring();
    const auto jpeg = photoJpeg(paintedPhoto(1600, 1200, true)).toStdString();
    for (const auto& piece : record.pieces)
        record.photos.push_back({PhotoId{1}, piece.id, {}, 1600, 1200, "", jpeg});
    record.photos.front().jpeg = "\xff\xd8 broken";
    return record;
}

TEST(ReportPdf, ShowsPhotosAsThumbnails) {
    ReportContext context;
    auto content = makeReport(withPhotos(), context);
    const auto before = content.ware[1].photos.at(0).jpeg.size();
    shrinkPhotos(content);
    EXPECT_LT(content.ware[1].photos.at(0).jpeg.size(), before / 2);
    const auto pdf = toPdf(layOutReport(content, Paper::letter));
    ASSERT_TRUE(pdf);
    EXPECT_LT(pdf->size(), 1'500'000);
    const SeenPdf seen(*pdf);
    EXPECT_EQ(seen.images(), 13); // all but the broken one
    EXPECT_LE(seen.pages(), 4);
    EXPECT_TRUE(seen.text().contains(QStringLiteral("vase 14, 34 mm, A")));
    for (int page = 1; page <= seen.pages(); ++page)
        EXPECT_TRUE(keepsOff(seen.page(page, 50), 24, 50)) << page;
}

TEST(ReportPdf, KeepsItsMargins) {
    for (const auto paper : {Paper::a4, Paper::letter}) {
        const auto pdf = seen(laidOut(withNotes(120), paper));
        for (int page = 1; page <= pdf.pages(); ++page)
            EXPECT_TRUE(keepsOff(pdf.page(page, 50), 24, 50)) << page;
    }
}

TEST(ReportPdf, TakesNotesInAnyWriting) {
    auto record = madeUpFiring();
    const char* const notes[] = {"Ёлка: приём у окна",
                                 "φλόγα μικρή",
                                 "釉薬の結晶が見える",
                                 "لهب صغير",
                                 "🔥 hot",
                                 "one\ttab and\na break",
                                 "averyveryverylongwordwithoutanyblank"
                                 "averyveryverylongwordwithoutanyblank"
                                 "averyveryverylongwordwithoutanyblank"
                                 "averyveryverylongwordwithoutanyblank"};
    for (const char* note : notes)
        record.notes.push_back({NoteId{1}, FiringId{23}, minuteIn(10), note});
    record.notes.push_back({NoteId{9}, FiringId{23}, minuteIn(11), "\xff\xfe broken"});
    record.firing.title = "Иней и лишайник";
    const auto pdf = seen(laidOut(record));
    const auto text = pdf.text();
    EXPECT_TRUE(text.contains(QStringLiteral("Ёлка: приём у окна")));
    EXPECT_TRUE(text.contains(QStringLiteral("φλόγα μικρή")));
    EXPECT_TRUE(text.contains(QStringLiteral("Иней и лишайник")));
    EXPECT_TRUE(text.contains(QStringLiteral("one tab and a break")));
    EXPECT_TRUE(keepsOff(pdf.page(1, 50), 24, 50));
}

TEST(ReportPdf, OfAnEmptyFiringIsOnePage) {
    FiringRecord record;
    record.firing.id = FiringId{1};
    record.firing.began = lit;
    record.kiln.name = "Wren";
    const auto pdf = seen(laidOut(record));
    EXPECT_EQ(pdf.pages(), 1);
    EXPECT_TRUE(pdf.text().contains(QStringLiteral("Firing 1, Wren")));
}

TEST(ReportPdf, IsWrittenWholeOrNotAtAll) {
    const QTemporaryDir folder;
    const auto document = laidOut(madeUpFiring());
    const auto path = std::filesystem::path(folder.path().toStdString()) / "report.pdf";
    ASSERT_TRUE(writePdf(document, path).ok());
    EXPECT_GT(std::filesystem::file_size(path), 10'000u);
    const auto refused = writePdf(document, path / "below a file.pdf");
    EXPECT_FALSE(refused.ok());
}

} // namespace
} // namespace ringhold
