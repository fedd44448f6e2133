// What one finished cook took: length, wood, what its pit usually takes, and its timeline.
#pragma once

#include "views/page.h"

namespace rickyard::views {

class CookProbes;
class Numeral;
class StatusPill;
class TextLabel;

class CookDetail : public QWidget
{
    Q_OBJECT

public:
    explicit CookDetail(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    [[nodiscard]] CookProbes &probes() { return *m_probes; }

private:
    void refresh();
    void showFuel(const domain::Cook &cook);

    PageContext &m_context;
    domain::RecordId m_cook = 0;
    Numeral *m_length = nullptr;
    Numeral *m_wood = nullptr;
    Numeral *m_excess = nullptr;
    StatusPill *m_pill = nullptr;
    TextLabel *m_words = nullptr;
    CookProbes *m_probes = nullptr;
};

// A cook's fuel against its norm as a sentence; what is missing when there is no norm.
QString fuelWords(const domain::Books &books, const domain::CookFuel &fuel);

} // namespace rickyard::views
