// The diagnosis in words: causes, what speaks for them, what to look at in which order, and the
// experiment that tells two causes apart.
#pragma once

#include "models/domain/answers/wording.h"
#include "models/domain/fire/diagnosis.h"

#include <QHash>
#include <QString>

namespace rickyard::domain {

struct DiagnosisNames {
    QString pit;
    QHash<RecordId, QString> lots;
};

// One look at the pit, the wood or the records. All are common practice, no source.
struct DiagnosisCheck {
    QString words;
    QString caution; // where the act itself can hurt; may be empty
};

// "Long Tom itself", "the lot Post oak 3".
QString causeName(const Cause &cause, const DiagnosisNames &names);
// "The 9 cooks with at least half of it: +17 %; the other 11: +1 %."
QString evidenceWords(const Cause &cause, const DiagnosisNames &names, const Wording &wording);
// In the order in which to look.
QVector<DiagnosisCheck> checksOf(CauseKind kind);
// What is said of every check.
QString checksBasis(); // "common practice, no source"

// What to do so that the next cooks tell the two apart.
QString experimentFor(const Cause &one, const Cause &other, const DiagnosisNames &names);
// "Most likely the lot Post oak 3 (87 in 100), about +18 % (+12 to +25 %)." or that two cannot be
// told apart yet, with the experiment.
QString diagnosisSentence(const Diagnosis &diagnosis, const DiagnosisNames &names,
                          const Wording &wording);
// "Not judged, because it was not written down: door openings, feed gaps." Empty when all were.
QString notJudgedWords(const Diagnosis &diagnosis);

} // namespace rickyard::domain
