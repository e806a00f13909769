package piece

func flipChart(j *Job) (*Result, error) { return attendance(j) }
