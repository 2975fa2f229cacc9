#include "tests/support/notebook_on_disk.h"
#include "ui/kiln/offset_series.h"
#include "ui/kiln/series_model.h"

#include <QAbstractItemModelTester>

namespace ringhold::test {
namespace {

TemperatureDifference degrees(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

Probe probeCalled(int id, const std::string& label) {
    return {ProbeId{id}, KilnId{1}, label, ThermocoupleType::S, "top", {}, {}};
}

FiledOffset told(int firing, int probe, const std::string& place, double mean_C) {
    return {FiringId{firing},    KilnId{1},       ProbeId{probe}, place,
            noonOfMarch(firing), degrees(mean_C), degrees(2)};
}

/// Without the thin spaces.
std::string plain(QString words) {
    for (const char16_t space : {u'\u2009', u'\u202f', u'\u00a0'})
        words.replace(QChar(space), QLatin1Char(' '));
    return words.toStdString();
}

struct WordsCase {
    double mean_C;
    double half_C;
    TemperatureUnit unit;
    const char* words;
};

} // namespace

class OffsetWords : public testing::TestWithParam<WordsCase> {};

TEST_P(OffsetWords, TellTheSideAndTheInterval) {
    const auto& c = GetParam();
    NotebookOnDisk book;
    ASSERT_TRUE(book->preferences().setUnit(c.unit).ok());
    EXPECT_EQ(plain(offsetWords(degrees(c.mean_C), degrees(c.half_C), book->preferences())), c.words);
}

constexpr auto celsiusUnit = TemperatureUnit::celsius;
INSTANTIATE_TEST_SUITE_P(Sides, OffsetWords,
                         testing::Values(WordsCase{7, 4, celsiusUnit, "7 °C high (3 to 11)"},
                                         WordsCase{-7, 4, celsiusUnit, "7 °C low (3 to 11)"},
                                         WordsCase{2, 3.4, celsiusUnit, "2 °C high (1 low to 5 high)"},
                                         WordsCase{-2, 3.4, celsiusUnit, "2 °C low (5 low to 1 high)"},
                                         WordsCase{0.2, 3, celsiusUnit, "right (3 low to 3 high)"},
                                         WordsCase{5, 5, celsiusUnit, "5 °C high (0 to 10)"},
                                         WordsCase{10, 5, TemperatureUnit::fahrenheit,
                                                   "18 °F high (9 to 27)"}));

TEST(OffsetSeriesTest, OneForEachProbeAndPlace) {
    const auto all = offsetSeries({probeCalled(1, "T1"), probeCalled(2, "T2")},
                                  {told(3, 1, "middle shelf", 6), told(1, 1, "middle shelf", 8),
                                   told(2, 1, "top shelf", -3), told(4, 9, "middle shelf", 50)});
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].place, "middle shelf");
    ASSERT_EQ(all[0].told.size(), 2U);
    EXPECT_EQ(all[0].told[0].firing, FiringId{1}); // in time order
    EXPECT_EQ(all[1].place, "top shelf");
    EXPECT_EQ(seriesName(all[0]).toStdString(), "T1 · middle shelf");
}

TEST(OffsetSeriesTest, ANewProbeStartsAfresh) {
    const auto all =
        offsetSeries({probeCalled(1, "T1"), probeCalled(2, "T2")}, {told(1, 1, "middle shelf", 9)});
    ASSERT_EQ(all.size(), 2U);
    EXPECT_TRUE(all[1].told.empty());
    EXPECT_EQ(all[1].now.firings, 0);
    EXPECT_DOUBLE_EQ(all[1].now.mean.celsius(), 0);
    EXPECT_EQ(seriesName(all[1]).toStdString(), "T2");
}

TEST(OffsetSeriesTest, SaysHowManyFiringsAreMissing) {
    NotebookOnDisk book;
    std::vector<FiledOffset> filed;
    const char* starts[] = {"not enough firings yet: 0 of 3. Until then it is taken to read right",
                            "not enough firings yet: 1 of 3.", "not enough firings yet: 2 of 3.",
                            "reads 7 °C high ("};
    for (int firings = 0; firings < 4; ++firings) {
        const auto words =
            plain(seriesWords(offsetSeries({probeCalled(1, "T1")}, filed)[0], book->preferences()));
        EXPECT_EQ(words.rfind(starts[firings], 0), 0U) << words;
        filed.push_back(told(firings + 1, 1, "middle shelf", 7));
    }
}

TEST(OffsetSeriesTest, SaysWhatTheNextFiringStartsFrom) {
    NotebookOnDisk book;
    std::vector<FiledOffset> filed;
    // a new class 2 S probe: 3.15 °C / sqrt 3, 2 °C and 8 °C in quadrature is 8.4 °C, times 1.645
    EXPECT_EQ(plain(startWords(offsetSeries({probeCalled(1, "T1")}, filed)[0], book->preferences())),
              "A new probe: ± 14 °C until cones have told.");
    for (int firings = 1; firings <= 5; ++firings)
        filed.push_back(told(firings, 1, "middle shelf", 6));
    const auto series = offsetSeries({probeCalled(1, "T1")}, filed)[0];
    EXPECT_EQ(plain(startWords(series, book->preferences())),
              "The next firing starts from + 6 °C, 90 % between + 2 and + 10, from 5 firings.");
    auto retired = probeCalled(1, "T1");
    retired.retired = noonOfMarch(20);
    EXPECT_EQ(plain(startWords(offsetSeries({retired}, filed)[0], book->preferences())),
              "Retired: nothing more is told of it.");
}

TEST(OffsetSeriesTest, KnowsWhatEachFiringBeganWith) {
    std::vector<FiledOffset> filed;
    for (int firings = 1; firings <= 4; ++firings)
        filed.push_back(told(firings, 1, "middle shelf", 6));
    const auto series = offsetSeries({probeCalled(1, "T1")}, filed)[0];
    ASSERT_EQ(series.begun.size(), 4U);
    EXPECT_EQ(series.begun[0].firings, 0);
    EXPECT_DOUBLE_EQ(series.begun[0].mean.celsius(), 0);
    for (std::size_t i = 1; i < 4; ++i)
        EXPECT_LT(series.begun[i].sd.celsius(), series.begun[i - 1].sd.celsius());
    EXPECT_LT(series.now.sd.celsius(), series.begun[3].sd.celsius());
}

TEST(OffsetSeriesTest, IsListed) {
    NotebookOnDisk book;
    SeriesModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(offsetSeries({probeCalled(1, "T1"), probeCalled(2, "T2")}, {}), book->preferences());
    EXPECT_EQ(model.rowCount(), 2);
    EXPECT_TRUE(model.index(1).data().toString().startsWith(u"T2 not enough firings yet"));
    model.show({}, book->preferences());
    EXPECT_EQ(model.rowCount(), 0);
}

} // namespace ringhold::test
