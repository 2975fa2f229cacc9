// Curves as CSV text, for the verbs that read one.
#pragma once

#include "core/units/time.h"

#include <fmt/format.h>

#include <string>

namespace ringhold {

/// Writes a curve by straight lines, a reading a minute, from 2026-03-01T12:00:00Z on.
class CurveCsv {
  public:
    explicit CurveCsv(double from_C) : m_now_C(from_C) { write(); }

    CurveCsv& to(double celsius, int minutes) {
        const double step = (celsius - m_now_C) / minutes;
        for (int i = 0; i < minutes; ++i) {
            m_now_C += step;
            m_at += std::chrono::minutes(1);
            write();
        }
        return *this;
    }
    CurveCsv& stay(int minutes) { return to(m_now_C, minutes); }

    const std::string& text() const { return m_text; }
    Instant now() const { return m_at; }

  private:
    void write() { m_text += fmt::format("{},{:.4f}\n", formatIso8601(m_at), m_now_C); }

    Instant m_at = *parseIso8601("2026-03-01T12:00:00Z");
    double m_now_C;
    std::string m_text = "time,probe_C\n";
};

} // namespace ringhold
