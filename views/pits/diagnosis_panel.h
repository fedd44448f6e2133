// Pit, wood or weather? The causes of a climb, likeliest first, what speaks for each, what to look
// at in which order, and two ways to act: file the finding with the task of looking, or say that
// the pit was looked at and nothing was found.
#pragma once

#include "models/domain/fire/diagnosis_words.h"
#include "models/domain/fire/fuel.h"
#include "views/page.h"

class QGridLayout;
class QPushButton;

namespace rickyard::views {

class CautionNote;
class TextLabel;

class DiagnosisPanel : public QWidget
{
    Q_OBJECT

public:
    explicit DiagnosisPanel(PageContext &context, QWidget *parent = nullptr);
    void showPit(domain::RecordId pit);
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] const domain::Diagnosis &diagnosis() const { return m_diagnosis; }

private:
    void showCauses(const domain::DiagnosisNames &names);
    void showChecks();
    void file();
    void foundNothing();

    PageContext &m_context;
    domain::RecordId m_pit = 0;
    domain::Diagnosis m_diagnosis;
    QString m_first; // name of the likeliest cause
    QString m_steps;
    QString m_cautions;
    TextLabel *m_sentence;
    QWidget *m_causeHolder;
    QGridLayout *m_causes;
    TextLabel *m_checks;
    TextLabel *m_basis;
    CautionNote *m_caution;
    QPushButton *m_file;
    QPushButton *m_nothing;
};

} // namespace rickyard::views
